// Hears of builds: reloads this page when it, or something it shows, changed; else renews the strip.
(() => {
  const mark = document.currentScript.dataset.mark;
  const strip = document.getElementById("bookmatch-preview");
  const key = "bookmatch-scroll " + location.pathname;
  try {
    const kept = sessionStorage.getItem(key);
    if (kept !== null) {
      sessionStorage.removeItem(key);
      history.scrollRestoration = "manual";
      scrollTo(0, Number(kept));
      addEventListener("load", () => {
        scrollTo(0, Number(kept));
        history.scrollRestoration = "auto";
      });
    }
  } catch { /* storage is off: the browser's own way will do */ }

  const file = (address) => {
    const url = new URL(address, location.href);
    if (url.origin !== location.origin) return null;
    const path = decodeURIComponent(url.pathname).slice(1);
    return path === "" || path.endsWith("/") ? path + "index.html" : path;
  };
  const used = () =>
    new Set([location.href, ...performance.getEntriesByType("resource").map((e) => e.name)].map(file));

  const reload = () => {
    try { sessionStorage.setItem(key, String(scrollY)); } catch { /* as above */ }
    location.reload();
  };

  const own = document.body.classList.contains("bookmatch-own");
  const builds = new EventSource("/-/events?mark=" + encodeURIComponent(mark));
  builds.addEventListener("built", (event) => {
    const { changed, strip: renewed } = JSON.parse(event.data);
    const mine = used();
    if (changed === null || (own && changed.length) || changed.some((path) => mine.has(path))) {
      reload();
    } else if (strip.innerHTML !== renewed) {
      const open = strip.querySelector("details")?.open;
      strip.innerHTML = renewed;
      if (open) strip.querySelector("details")?.setAttribute("open", "");
    }
  });
})();
