// @ts-check
/**
 * The theme's search, run when it is first wanted: its script is larger than all of ours,
 * and most visits need no search.
 */
export function startSearch() {
  const dialog = document.getElementById("site-search");
  const later = document.querySelector("script[data-search-script]");
  const opener = document.querySelector('[data-opens="site-search"]');
  const field = dialog?.querySelector("input");
  if (!dialog || !later || !opener || !field) return;
  const load = () => {
    const script = document.createElement("script");
    script.src = later.getAttribute("src") ?? "";
    script.addEventListener("load", () => {
      field.blur(); // it watches for the focus to come
      field.focus();
    });
    script.addEventListener("error", () => {
      const line = dialog.querySelector(".md-search-result__meta");
      if (line) line.textContent = "Search could not be loaded. The foot of each page lists all pages.";
    });
    later.replaceWith(script);
  };
  opener.addEventListener("click", load, { once: true });
  field.form?.addEventListener("submit", (event) => event.preventDefault()); // it has nowhere to go
  dialog.addEventListener("keydown", (event) => {
    if (event.key === "Tab") event.stopPropagation(); // the theme's script would hide what was found
  });
  opener.addEventListener("click", () => field.focus());
}
