// @ts-check
/**
 * What script adds to a card's form: a line that says what is going on, the buttons, and
 * a line that only screen readers hear. card.css keeps the room for them.
 */
export function cardTools() {
  const box = element("div", "tools");
  const announcer = element("p", "announcer visually-hidden");
  announcer.setAttribute("role", "status");
  const row = element("div", "tools-row");
  row.append(button("over", "Start over"), button("link", "Copy link"), button("job", "Add to job"));
  box.append(row, element("p", "says"), announcer);
  return box;
}

/**
 * @param {string} name
 * @param {string} classes
 */
function element(name, classes) {
  const made = document.createElement(name);
  made.className = classes;
  return made;
}

/**
 * @param {string} tool
 * @param {string} label
 */
function button(tool, label) {
  const made = document.createElement("button");
  made.type = "button";
  made.dataset.tool = tool;
  made.textContent = label;
  return made;
}
