// @ts-check
/** The copy of the guide on this device: how far it is, how big, filling gaps, removing it. */
import { endPython } from "./engine.js";

const SCOPE = new URL("../../", import.meta.url).href;
const CACHE = `workbox-precache-v2-${SCOPE}`; // Workbox's own name for it

/** @returns {Promise<{ state: "none" | "fetching" | "whole" | "never", says: string, waiting?: boolean }>} */
export async function copyOfGuide() {
  if (!("serviceWorker" in navigator) || !("caches" in self)) {
    return { state: "never", says: "This browser does not keep pages for use without a signal, at least not here." };
  }
  const registration = await navigator.serviceWorker.getRegistration(SCOPE);
  if (registration?.active) {
    const { files, bytes } = await measured();
    const waiting = registration.waiting ? " A new version has been fetched and waits until you change to it." : "";
    const coming = registration.installing ? " A new version is being fetched." : "";
    const size = `${files} files, ${megabytes(bytes)}`;
    const state = coming ? "fetching" : "whole";
    const says = `The whole guide is kept here: ${size}. It works without a signal.${waiting}${coming}`;
    return { state, says, waiting: Boolean(waiting) };
  }
  if (registration?.installing) {
    const files = (await cacheKeys()).length;
    return { state: "fetching", says: `The guide is being fetched: ${files} files so far. Stay on this page, with a signal, until it is whole.` };
  }
  return { state: "none", says: "The guide is not kept on this device yet." };
}

/**
 * Ask for every file once: what is kept answers at once, what was lost is fetched.
 * @param {import("workbox-window").Workbox} workbox
 * @returns {Promise<string>}
 */
export async function fillGaps(workbox) {
  const registration = await navigator.serviceWorker.getRegistration(SCOPE);
  if (registration?.waiting) return "There is a new version. It has been fetched; change to it when it suits you.";
  if (registration?.installing || !navigator.serviceWorker.controller) return "It is being fetched.";
  const [files, before] = [await workbox.messageSW({ type: "FILES" }), await cacheKeys()];
  if (before.length >= files.length) return "This is the newest version, and it is whole.";
  for (const file of files) {
    const response = await fetch(file);
    if (!response.ok) return "Some of it could not be fetched. Try again with a better signal.";
    await response.arrayBuffer();
  }
  const added = (await cacheKeys()).length - before.length;
  return `This is the newest version. ${added} lost ${added === 1 ? "file was" : "files were"} fetched again.`;
}

export async function removeCopy() {
  const registration = await navigator.serviceWorker.getRegistration(SCOPE);
  await registration?.unregister();
  endPython();
  await caches.delete(CACHE);
}

async function cacheKeys() {
  return (await caches.has(CACHE)) ? (await caches.open(CACHE)).keys() : [];
}

async function measured() {
  const keys = await cacheKeys();
  const cache = await caches.open(CACHE);
  let bytes = 0;
  for (const key of keys) bytes += (await (await cache.match(key))?.blob())?.size ?? 0;
  return { files: keys.length, bytes };
}

/** @param {number} bytes */
const megabytes = (bytes) => `${(bytes / 1e6).toFixed(1)} MB`;
