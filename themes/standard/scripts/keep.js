// Has what a page is made of kept on this device, where a server gives it: from a disk it opens without one anyway.
(() => {
  // A page that is being written shows what was saved last, and nothing older.
  const written = document.querySelector('script[src="/-/reload.js"]');
  if (written || !("serviceWorker" in navigator) || !/^https?:$/.test(location.protocol)) return;
  const worker = new URL("../kept.js", document.currentScript.src).href;
  addEventListener("load", async () => {
    try {
      await navigator.serviceWorker.register(worker);
      const { active } = await navigator.serviceWorker.ready;
      active.postMessage({ keep: [location.href, ...performance.getEntriesByType("resource").map(({ name }) => name), ...[...document.querySelectorAll("a[data-keep]")].map(({ href }) => href)] });
    } catch { /* This device keeps nothing; the page is as it was. */ }
  });
})();
