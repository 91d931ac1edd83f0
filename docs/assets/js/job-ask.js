// @ts-check
/**
 * Ask one question and wait for the press of a button.
 * @param {string} text
 * @param {[string, string][]} answers key and words; the last one is the careful one
 * @returns {Promise<string>} a key; empty when the dialog was left
 */
export function askReader(text, answers) {
  const dialog = document.createElement("dialog");
  dialog.className = "job-ask";
  dialog.setAttribute("aria-label", text);
  const question = document.createElement("p");
  question.textContent = text;
  const row = document.createElement("div");
  row.className = "job-buttons";
  for (const [key, words] of answers) {
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = words;
    button.addEventListener("click", () => dialog.close(key));
    row.append(button);
  }
  dialog.append(question, row);
  document.body.append(dialog);
  dialog.showModal();
  /** @type {HTMLElement | null} */ (row.lastElementChild)?.focus();
  return new Promise((settle) => {
    dialog.addEventListener("close", () => {
      dialog.remove();
      settle(dialog.returnValue);
    });
  });
}
