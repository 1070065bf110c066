// Hears of builds. When this page alone changed, what it says is put in its place, which is many times
// quicker than to load it; when a file that it shows changed, it is loaded anew; else the strip is renewed.
(() => {
  const mark = document.currentScript.dataset.mark;
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
  // The page's own text, once fetched, is no file beside it.
  performance.setResourceTimingBufferSize(10000);
  const beside = () =>
    new Set(performance.getEntriesByType("resource").filter((one) => one.initiatorType !== "fetch")
      .map((one) => file(one.name)));

  const reload = () => {
    try { sessionStorage.setItem(key, String(scrollY)); } catch { /* as above */ }
    location.reload();
  };

  // A page has no script but this: what it says and what it is styled by are all of it.
  const strip = () => document.getElementById("bookmatch-preview");
  const keepOpen = (change) => {
    const open = strip().querySelector("details")?.open;
    change();
    if (open) strip().querySelector("details")?.setAttribute("open", "");
  };
  const styles = (page) => [...page.querySelectorAll("head link, head style")].map((one) => one.outerHTML).join();
  let latest = 0;
  const replace = async () => {
    const ours = ++latest;
    const answer = await fetch(location.href, { cache: "no-store" });
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    // A later build has been heard of meanwhile: it brings its own.
    if (ours !== latest) return;
    if (!answer.ok || styles(page) !== styles(document)) return reload();
    const [x, y] = [scrollX, scrollY];
    document.title = page.title;
    document.documentElement.lang = page.documentElement.lang;
    keepOpen(() => document.body.replaceWith(document.adoptNode(page.body)));
    scrollTo({ left: x, top: y, behavior: "instant" });
  };

  const own = document.body.classList.contains("bookmatch-own");
  const builds = new EventSource("/-/events?mark=" + encodeURIComponent(mark));
  builds.addEventListener("built", (event) => {
    const { changed, strip: renewed } = JSON.parse(event.data);
    const shown = beside();
    if (changed === null || (own && changed.length) || changed.some((path) => shown.has(path))) {
      reload();
    } else if (changed.includes(file(location.href))) {
      replace().catch(reload);
    } else if (strip().innerHTML !== renewed) {
      keepOpen(() => (strip().innerHTML = renewed));
    }
  });
})();
