// Says that a newer issue of the book stands, where a page can know it: from the file beside it, where a server gives it;
// from what newer pages left on this device; from what the office's address answered.
(() => {
  const notice = document.getElementById("older");
  if (!notice) return;
  const { book, issue, on, root } = notice.dataset, KEPT = `bookmatch ${book} newest`;
  const served = /^https?:$/.test(location.protocol);
  const lang = document.documentElement.lang === "en" ? "en-GB" : document.documentElement.lang;
  const day = (on) => new Date(on + "T12:00Z").toLocaleDateString(lang, { day: "numeric", month: "short", year: "numeric", timeZone: "UTC" });
  const kept = () => { try { return JSON.parse(localStorage.getItem(KEPT)); } catch { return null; } };
  /** Hears of an issue; one that is newer than the page is told, and the newest is kept for other pages. */
  const heard = (newest) => {
    if (!newest || newest.book !== book || !(newest.issue > 0)) return;
    if (newest.issue > (kept()?.issue ?? 0)) try { localStorage.setItem(KEPT, JSON.stringify(newest)); } catch { /* It keeps nothing. */ }
    if (newest.issue <= Number(issue)) return;
    const says = notice.querySelector("[data-says]");
    says.textContent = says.dataset.says.replace("{issue}", issue).replace("{newest}", newest.issue).replace("{day}", newest.on ? `, ${day(newest.on)}` : "");
    notice.querySelector(served ? "[data-anew]" : "[data-ask]").hidden = false;
    notice.hidden = false;
  };
  const look = async () => {
    heard(kept());
    if (!served || !navigator.onLine) return;
    // A page may be kept where the file beside it is not, or come from a server that is gone by now.
    try { heard(await (await fetch(`${root}issue.json`, { cache: "no-store" })).json()); } catch { /* It can't know. */ }
  };
  heard({ book, issue: Number(issue), on });
  look();
  document.addEventListener("visibilitychange", () => { if (document.visibilityState === "visible") look(); });
  addEventListener("pageshow", (event) => { if (event.persisted) look(); });
  addEventListener("online", look);
  addEventListener("storage", (event) => { if (event.key === KEPT) heard(kept()); });
  addEventListener("newest issue", (event) => heard({ book, issue: event.detail }));
})();
