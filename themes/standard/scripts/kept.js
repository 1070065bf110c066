// Stands between the pages of one folder and their server: what was opened once opens again without a signal.
// A page, its styles, scripts, fonts and pictures come from the server where that answers, else from what is kept.
(() => {
  const CACHE = `bookmatch ${registration.scope}`, MOST = 800, PATIENCE = 4000;
  /** The address without what is only for the page itself. */
  const plain = (url) => { const bare = new URL(url); bare.hash = ""; bare.search = ""; return bare.href; };
  const keep = async (url, answer) => {
    const cache = await caches.open(CACHE);
    await cache.put(url, answer);
    // The oldest go first: what is kept anew stands last.
    const all = await cache.keys();
    await Promise.all(all.slice(0, Math.max(0, all.length - MOST)).map((old) => cache.delete(old)));
  };
  const known = async (url) => (await caches.open(CACHE)).match(url);
  const good = (answer) => answer.status === 200 && answer.type === "basic" && !answer.redirected;
  const after = (ms) => new Promise((over) => { setTimeout(over, ms); });
  /** The server's answer; what is kept where there is none, where it comes late, and where the server itself fails. */
  const answer = async (fresh, url) => {
    const kept = await known(url);
    if (!kept) return fresh;
    const late = after(PATIENCE).then(() => kept);
    return Promise.race([fresh.then((now) => (now.status >= 500 ? kept : now), () => kept), late]);
  };
  addEventListener("install", () => skipWaiting());
  addEventListener("activate", (event) => event.waitUntil(clients.claim()));
  addEventListener("fetch", (event) => {
    const { request } = event, url = plain(request.url);
    // What a script asks for must be as it is now, or fail.
    if (request.method !== "GET" || request.destination === "" || !url.startsWith(registration.scope)) return;
    const fresh = fetch(request);
    event.waitUntil(fresh.then((now) => { const copy = good(now) ? now.clone() : null; return copy && keep(url, copy); }).catch(() => { /* It stays as it was. */ }));
    event.respondWith(answer(fresh, url));
  });
  /** A page that was there before this was tells what it is made of. */
  addEventListener("message", (event) => event.waitUntil(Promise.all((event.data.keep ?? []).map(plain).filter((url) => url.startsWith(registration.scope) && !url.endsWith(".json")).map(async (url) => {
    if (await known(url)) return;
    const now = await fetch(url).catch(() => null);
    if (now && good(now)) await keep(url, now);
  }))));
})();
