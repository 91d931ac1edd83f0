// Runs before the first paint, so that nothing flashes or moves: says that scripts run,
// puts the reader's own colors and units on the page, and tells whether a job is open.
{
  const root = document.documentElement;
  root.classList.replace("no-js", "js");
  try {
    const theme = localStorage.getItem("dry-tight:theme");
    if (theme === "light" || theme === "dark") root.dataset.theme = theme;
    if (localStorage.getItem("dry-tight:system") === "si") root.dataset.system = "si";
    if (localStorage.getItem("dry-tight:job")) root.dataset.hasJob = "";
  } catch {
    // Storage may be closed to us; the defaults then hold.
  }
}
