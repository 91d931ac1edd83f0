// @ts-check
/**
 * Keeps the guide on this device, once the page has done what it was opened for, and asks
 * before a new version takes the place of the one in use.
 */
const SCRIPT = new URL("../../service-worker.js", import.meta.url);
const LATER = "dry-tight:update-later";
const PATIENCE = 30_000; // ms that a first answer may take before the guide is kept without it

/** Something about the copy on this device has changed. */
export class OfflineEvent extends Event {
  constructor() {
    super("offline-copy");
  }
}

/** @type {Promise<import("workbox-window").Workbox> | undefined} */
let registered;

export function startOffline() {
  if (!("serviceWorker" in navigator)) return;
  let kept = Boolean(navigator.serviceWorker.controller);
  navigator.serviceWorker.addEventListener("controllerchange", () => {
    // Every open page goes over to the new version together: none is left with half of each.
    if (kept) location.reload();
    kept = true;
  });
  if (!document.querySelector("worked-card")) {
    if (document.readyState === "complete") keepOffline();
    else addEventListener("load", () => keepOffline(), { once: true });
    return;
  }
  document.addEventListener("answered", () => setTimeout(keepOffline, 500), { once: true });
  setTimeout(keepOffline, PATIENCE);
}

/** Register, once; the promise gives Workbox's hold on the service worker. */
export function keepOffline() {
  registered ??= import("../vendor/workbox-window.js").then(({ Workbox }) => {
    const workbox = new Workbox(SCRIPT.href);
    const changed = () => document.dispatchEvent(new OfflineEvent());
    for (const type of ["installing", "installed", "activated", "redundant"]) workbox.addEventListener(type, changed);
    workbox.addEventListener("waiting", () => {
      changed();
      if (!isPutOff()) ask(() => workbox.messageSkipWaiting());
    });
    workbox.register({ immediate: true }).catch(changed); // no signal: what is kept is in use
    return workbox;
  });
  registered.catch(() => (registered = undefined));
  return registered;
}

/** @param {() => void} accept */
function ask(accept) {
  if (document.querySelector(".update")) return;
  const box = document.createElement("aside");
  box.className = "update";
  box.setAttribute("aria-label", "New version");
  const words = document.createElement("p");
  words.setAttribute("role", "status");
  const yes = button("Use it now", "yes");
  const no = button("Later", "no");
  box.append(words, yes, no);
  document.querySelector(".bar")?.after(box);
  document.documentElement.classList.add("has-update");
  // Said once the line is in the page, so that a screen reader hears it.
  setTimeout(() => {
    words.textContent = "A new version of the guide is ready. Every open page of it will reload. What you typed is kept.";
  }, 50);
  yes.addEventListener("click", () => {
    yes.disabled = no.disabled = true;
    words.textContent = "Changing to the new version.";
    accept();
  });
  no.addEventListener("click", () => {
    putOff();
    box.remove();
    document.documentElement.classList.remove("has-update");
  });
}

/**
 * @param {string} label
 * @param {string} answer
 */
function button(label, answer) {
  const made = document.createElement("button");
  made.type = "button";
  made.dataset.update = answer;
  made.textContent = label;
  return made;
}

/** "Later" holds until the tab is closed. */
function putOff() {
  try {
    sessionStorage.setItem(LATER, "yes");
  } catch {
    // Then the next page asks again.
  }
}

function isPutOff() {
  try {
    return sessionStorage.getItem(LATER) !== null;
  } catch {
    return false;
  }
}
