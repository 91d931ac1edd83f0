// @ts-check
/** Buttons that open and close the page's dialogs: `data-opens="id"`, `data-closes`. */
export function startDialogs() {
  for (const button of document.querySelectorAll("[data-opens]")) {
    const dialog = document.getElementById(button.getAttribute("data-opens") ?? "");
    if (!(dialog instanceof HTMLDialogElement)) continue;
    button.addEventListener("click", () => dialog.showModal());
    dialog.addEventListener("click", (event) => {
      const onBackdrop = event.target === dialog && !contains(dialog, event);
      if (onBackdrop || (event.target instanceof Element && event.target.closest("[data-closes]"))) dialog.close();
    });
  }
}

/**
 * @param {Element} element
 * @param {MouseEvent} point
 */
function contains(element, point) {
  const { left, right, top, bottom } = element.getBoundingClientRect();
  return left <= point.clientX && point.clientX <= right && top <= point.clientY && point.clientY <= bottom;
}
