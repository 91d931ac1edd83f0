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

// Python answers in a worker, which all pages share where the browser can. Where a card will ask
// it at once, it is opened while the page is still on its way; engine.js talks with it.
{
  const { worker, asks } = document.currentScript.dataset;
  const address = new URL(worker, document.baseURI);
  const settings = { type: "module", extendedLifetime: true };
  const Kind = globalThis.SharedWorker ?? Worker;
  globalThis.openPython = () => new Kind(address, settings);
  if (asks !== undefined && Kind !== Worker) globalThis.openPython();
}
