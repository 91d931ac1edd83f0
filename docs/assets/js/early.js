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

// Opens the Python that all pages share, for engine.js; and at once, while the rest of the page
// is still on its way, where the page has a card that will ask it.
if ("SharedWorker" in globalThis) {
  const { src, dataset } = document.currentScript;
  globalThis.openSharedPython = async () => {
    const { default: manifest } = await import("../runtime/manifest.js");
    // The name keeps pages of one build from a Python of another.
    const settings = { type: "module", name: manifest.version, extendedLifetime: true };
    return new SharedWorker(new URL("worker.js", src), settings);
  };
  if ("asks" in dataset) globalThis.openSharedPython().catch(() => {}); // engine.js hears of it
}
