// @ts-check
/**
 * The whole guide on the device, out of Workbox's parts. scripts/offline.py puts the list of
 * files in, each with the hash of its content, and esbuild makes one file of it all.
 *
 * A file that has not changed is kept through an update. A file that arrives broken, or not
 * at all, stops the update, and what was there before stays whole. A new version waits until
 * the reader has agreed (offline.js asks).
 */
import { clientsClaim } from "workbox-core";
import { addPlugins, getCacheKeyForURL, matchPrecache, precacheAndRoute } from "workbox-precaching";
import { registerRoute } from "workbox-routing";
import { NetworkOnly } from "workbox-strategies";

/** Address, from the folder of this file: hash of the content. @type {Record<string, string>} */
const FILES = __FILES__;

const here = (/** @type {string} */ path) => new URL(path, self.location.href).href;

// What the browser has just fetched for the page is asked after, not fetched again.
addPlugins([{ requestWillFetch: async ({ request }) => new Request(request, { cache: "no-cache" }) }]);

precacheAndRoute(
  Object.entries(FILES).map(([path, hash]) => ({ url: here(path), revision: hash, integrity: `sha256-${hash}` })),
  {
    ignoreURLParametersMatching: [/./], // a link that fills a card is still that page
    directoryIndex: "",
    cleanURLs: false,
    urlManipulation: ({ url }) => [new URL(url.pathname.replace(/\/index\.html$/, "/"), url)],
  },
);

// A folder without its slash: a server sends the browser on, and so does this.
const folder = (/** @type {URL} */ url) => here(`${url.pathname}/`);
registerRoute(
  ({ request, url }) => request.mode === "navigate" && Boolean(getCacheKeyForURL(folder(url))),
  async ({ url }) => Response.redirect(folder(url) + url.search, 302),
);

// Any other page is the network's to find; without one, the guide says that it has none.
registerRoute(
  ({ request }) => request.mode === "navigate",
  new NetworkOnly({
    plugins: [{ handlerDidError: async () => (await matchPrecache(here("404.html"))) ?? Response.error() }],
  }),
);

clientsClaim();
addEventListener("message", ({ data, ports }) => {
  if (data?.type === "SKIP_WAITING") /** @type {any} */ (self).skipWaiting();
  if (data?.type === "FILES") ports[0].postMessage(Object.keys(FILES).map(here));
});
