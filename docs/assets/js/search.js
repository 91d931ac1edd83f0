// @ts-check
/**
 * The theme's search, run when it is first wanted: its script is larger than all of ours,
 * and most visits need no search.
 */
export function startSearch() {
  const dialog = document.getElementById("site-search");
  const later = document.querySelector("script[data-search-script]");
  const opener = document.querySelector('[data-opens="site-search"]');
  if (!dialog || !later || !opener) return;
  opener.addEventListener(
    "click",
    () => {
      const script = document.createElement("script");
      script.src = later.getAttribute("src") ?? "";
      script.addEventListener("error", () => {
        const line = dialog.querySelector(".md-search-result__meta");
        if (line) line.textContent = "Search could not be loaded. The contents at the foot of the page list every page.";
      });
      later.replaceWith(script);
    },
    { once: true },
  );
  opener.addEventListener("click", () => dialog.querySelector("input")?.focus());
}
