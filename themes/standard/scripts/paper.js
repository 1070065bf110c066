// What every script needs of a page: its data, its words, elements, and what is kept on this device.
const Paper = (() => {
  const data = (id) => JSON.parse(document.getElementById(id)?.textContent ?? "null");
  const w = data("words") ?? {};
  const page = document.documentElement.lang || "en";
  // Sheets write the day before the month in either language.
  const lang = page === "en" ? "en-GB" : page;
  /** Whether a count is what a condition of the language's file asks: `n % 100 != 11..14,20`. */
  const holds = (count, condition) => {
    const [, of, by, not, ranges] = /^(\w) *(?:% *(\d+))? *(!?)= *(.+)$/.exec(condition);
    const is = /[ni]/.test(of) ? count % (by ?? Infinity) : 0;
    return ranges.split(",").some((range) => {
      const [from, to = from] = range.split("..").map(Number);
      return from <= is && is <= to;
    }) !== (not === "!");
  };
  /** The plural form of a count, by the rules in the language's file: its own browser need not know it. */
  const form = (count) => Object.keys(w.plural ?? {}).find((one) =>
    w.plural[one].split(" or ").some((all) => all.split(" and ").every((condition) => holds(count, condition)))) ?? "other";
  /** A sentence with its gaps filled, in the form of its `n` where it has several: `{n} of {all}`. */
  const fill = (words, gaps) => (words.other ? words[form(gaps.n)] : words).replace(/\{(\w+)\}/g, (_, gap) => gaps[gap] ?? "");
  // Whatever a person wrote becomes text here, and can become nothing else.
  const put = (node, attributes, inside) => {
    for (const [name, value] of Object.entries(attributes)) {
      if (typeof value === "function") node.addEventListener(name, value);
      else if (value !== false && value != null) node.setAttribute(name, value === true ? "" : value);
    }
    node.append(...inside.filter((part) => part != null && part !== false));
    return node;
  };
  const el = (tag, attributes = {}, ...inside) => put(document.createElement(tag), attributes, inside);
  const svg = (tag, attributes = {}, ...inside) => put(document.createElementNS("http://www.w3.org/2000/svg", tag), attributes, inside);
  const state = (shape, word) => el("span", { class: "state" },
    svg("svg", { class: "s", "aria-hidden": "true" }, svg("use", { href: `#m-${shape}` })), el("span", {}, word));
  const mark = (whole) => `${whole.slice(0, 4)} ${whole.slice(4, 8)}`;
  const now = () => new Date().toISOString().slice(0, 19) + "Z";
  const moment = (at) => new Date(at).toLocaleString(lang, { dateStyle: "medium", timeStyle: "short" });
  const day = (on) => new Date(on + "T12:00Z").toLocaleDateString(lang, { day: "numeric", month: "short", year: "numeric", timeZone: "UTC" });
  const here = new Map();
  let lasts = true;
  const read = (key) => {
    let text = here.get(key) ?? null;
    try { text = localStorage.getItem(key) ?? text; } catch { lasts = false; }
    try { return JSON.parse(text); } catch { return null; }
  };
  /** Keeps a value on this device, or while the page is open where the device keeps nothing. */
  const write = (key, value) => {
    here.set(key, JSON.stringify(value));
    try { localStorage.setItem(key, JSON.stringify(value)); } catch { lasts = false; }
    return lasts;
  };
  /** This device, and its count of what was said on it: the order, whatever its clock says. */
  const turn = (book, fresh) => {
    const place = `bookmatch ${book} device`, { id, turn } = read(place) ?? { id: fresh(), turn: 0 };
    write(place, { id, turn: turn + 1 });
    return read(place);
  };
  /** Hears of what another page kept, also while this one was put aside. */
  const others = (tell) => {
    addEventListener("storage", (event) => {
      if (event.key?.startsWith("bookmatch ")) { here.delete(event.key); tell(); }
    });
    addEventListener("pageshow", (event) => event.persisted && tell());
  };
  /** Half a letter, as a broken paste may leave, can be in no JSON. */
  const whole = (text) => Array.from(text, (letter) => (/^[\ud800-\udfff]$/.test(letter) ? "\ufffd" : letter)).join("");
  /** The page's scripts run: what stands for where they do not goes. */
  const scripted = () => document.querySelectorAll("[data-unscripted]").forEach((said) => said.remove());
  let waiting = 0;
  /** Says something to a screen reader once the typing rests. */
  const say = (place, words) => {
    clearTimeout(waiting);
    waiting = setTimeout(() => { place.textContent = words; }, 500);
  };
  return { data, w, lang, fill, el, svg, state, mark, now, moment, day, read, write, turn, others, whole, say, scripted, lasting: () => lasts };
})();
