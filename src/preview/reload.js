// Hears of builds: renews this page when it, or something it shows, changed; else renews the strip.
(() => {
  const mark = document.currentScript.dataset.mark;
  const shown = () => document.getElementById("bookmatch-preview");
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

  // What differs is put in the place of what was; all else stays, and needs no drawing anew.
  const renew = (was, now) => {
    if (was.isEqualNode(now)) return;
    const alike = was.nodeType === 1 && was.nodeName === now.nodeName
      && was.childNodes.length === now.childNodes.length
      && was.cloneNode().isEqualNode(now.cloneNode());
    if (alike) [...was.childNodes].forEach((child, at) => renew(child, now.childNodes[at]));
    else was.replaceWith(document.adoptNode(now));
  };
  const scripts = (page) => [...page.scripts].map((script) => script.getAttribute("src")).join();
  const refresh = async () => {
    const answer = await fetch(location.href);
    if (!answer.ok) return reload();
    const fresh = new DOMParser().parseFromString(await answer.text(), "text/html");
    document.title = fresh.title;
    // Other styles, or a script besides this one, want a page from the start.
    if (scripts(fresh) !== "/-/reload.js" || !document.head.isEqualNode(fresh.head)) return reload();
    renew(document.body, fresh.body);
  };

  const own = document.body.classList.contains("bookmatch-own");
  const builds = new EventSource("/-/events?mark=" + encodeURIComponent(mark));
  builds.addEventListener("built", (event) => {
    const { changed, strip: renewed } = JSON.parse(event.data);
    const mine = used();
    if (changed === null || (own && changed.length)) {
      reload();
    } else if (changed.some((path) => mine.has(path))) {
      // A picture or a style keeps its name: only a reload asks for it again.
      if (changed.some((path) => mine.has(path) && path !== file(location.href))) reload();
      else refresh().catch(reload);
    } else if (shown().innerHTML !== renewed) {
      const strip = shown();
      const open = strip.querySelector("details")?.open;
      strip.innerHTML = renewed;
      if (open) strip.querySelector("details")?.setAttribute("open", "");
    }
  });
})();
