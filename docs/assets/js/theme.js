// @ts-check
/** Light or dark: follows the device until the reader says otherwise. */

const KEY = "dry-tight:theme";
const device = matchMedia("(prefers-color-scheme: dark)");

const isDark = () => (document.documentElement.dataset.theme ?? (device.matches ? "dark" : "light")) === "dark";

/** Told on `document` when the colors have changed, for what draws with them. */
export class ThemeEvent extends Event {
  constructor() {
    super("theme");
  }
}

export function startTheme() {
  const buttons = document.querySelectorAll("[data-theme-button]");
  const show = () => {
    for (const button of buttons) button.setAttribute("aria-pressed", String(isDark()));
    document.dispatchEvent(new ThemeEvent());
  };
  for (const button of buttons) {
    button.addEventListener("click", () => {
      choose(isDark() ? "light" : "dark");
      show();
    });
  }
  device.addEventListener("change", show);
  show();
}

/** @param {"light" | "dark"} theme */
function choose(theme) {
  const follows = theme === (device.matches ? "dark" : "light");
  if (follows) delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = theme;
  try {
    if (follows) localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, theme);
  } catch {
    // Not kept, then; the page in hand still follows.
  }
}
