// What test_access.py looks at in a page. Each function gives a list of findings, as texts.
globalThis.access = {
  async axe(rules) {
    const type = rules[0].startsWith("wcag") ? "tag" : "rule";
    const options = { runOnly: { type, values: rules }, resultTypes: ["violations"] };
    const { violations } = await axe.run(document, options);
    return violations.flatMap(({ id, nodes }) =>
      nodes.map(({ target, html }) => `${id}: ${target} ${html.slice(0, 120)}`),
    );
  },

  // A link within a sentence is let off, as WCAG 2.5.8 does; a box is as large as its label.
  small(least) {
    const inSentence = (each) =>
      each.matches("a") &&
      getComputedStyle(each).display === "inline" &&
      each.closest("p, li, dd, td, th")?.textContent.trim() !== each.textContent.trim();
    return [...document.querySelectorAll("a[href], button, input, select, textarea, summary")]
      .filter((each) => each.checkVisibility({ visibilityProperty: true }) && !inSentence(each))
      .filter((each) => !each.matches(".md-skip, [type=hidden]"))
      .map((each) => [each, (each.closest("label") ?? each).getBoundingClientRect()])
      .filter(([, { width }]) => width > 1)
      .filter(([, { width, height }]) => Math.min(width, height) < least - 0.5)
      .map(([each, { width, height }]) => `${Math.round(width)}x${Math.round(height)} ${shown(each)}`);
  },

  wide() {
    const room = document.documentElement.clientWidth;
    if (document.documentElement.scrollWidth <= room) return [];
    return [...document.querySelectorAll("body *")]
      .filter((each) => !each.closest(".scroll, .math-block, dialog"))
      .filter((each) => each.getBoundingClientRect().right > room + 1)
      .slice(0, 3)
      .map(shown);
  },

  moving() {
    const moves = ({ transitionDuration, animationName, scrollBehavior }) =>
      /[1-9]/.test(transitionDuration) || animationName !== "none" || scrollBehavior === "smooth";
    return [...document.querySelectorAll("body, body *")]
      .filter((each) => moves(getComputedStyle(each)))
      .slice(0, 3)
      .map(shown);
  },

  skip() {
    const skip = document.querySelector(".md-skip");
    if (!skip) return ["no link that skips to the content"];
    const place = document.getElementById(decodeURIComponent(skip.hash.slice(1)));
    return place ? [] : [`nothing has the id of ${skip.hash}`];
  },

  // What has the focus, once the page has scrolled to it; null when nothing has.
  async focused() {
    for (let still = 0, before = -1; still < 4; before = scrollY) {
      await new Promise(requestAnimationFrame);
      still = before === scrollY ? still + 1 : 0;
    }
    const at = document.activeElement;
    if (!at || at === document.body) return null;
    const { left, right, top, bottom } = at.getBoundingClientRect();
    const middle = document.elementFromPoint(
      (Math.max(left, 0) + Math.min(right, innerWidth)) / 2,
      (Math.max(top, 0) + Math.min(bottom, innerHeight)) / 2,
    );
    const ringed = (each) => {
      if (!each) return false;
      const { outlineStyle, outlineWidth } = getComputedStyle(each);
      return outlineStyle !== "none" && parseFloat(outlineWidth) >= 2;
    };
    return {
      name: at.getAttribute("aria-label") || at.textContent.trim().slice(0, 40) || at.name,
      html: shown(at),
      inside: right > Math.max(left, 0) && bottom > Math.max(top, 0) && left < innerWidth && top < innerHeight,
      ringed: ringed(at) || ringed(at.closest(".field")),
      covered: !middle || !(at.contains(middle) || middle.contains(at)),
    };
  },

  // Each element's color and the ground it stands on.
  painted(wanted) {
    const ground = (each) => getComputedStyle(each).backgroundColor;
    return [...document.querySelectorAll(wanted)]
      .filter((each) => each.checkVisibility())
      .map((each) => {
        let behind = each;
        while (behind.parentElement && ground(behind) === "rgba(0, 0, 0, 0)") behind = behind.parentElement;
        return [shown(each), getComputedStyle(each).color, ground(behind)];
      });
  },
};

function shown(each) {
  return each.outerHTML.slice(0, 110);
}
