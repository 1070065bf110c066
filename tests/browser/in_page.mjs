// What is asked of a page from inside it. Each function runs in the browser and uses nothing from outside itself.

/** Names an element so that a reader finds it. Put into the page before the other functions. */
export function installNames() {
  window.nameOf = (element) => {
    const id = element.id ? "#" + element.id : "";
    const classes = (element.getAttribute("class") ?? "").trim();
    const words = (element.textContent ?? "").trim().replace(/\s+/g, " ").slice(0, 40);
    const name = element.tagName.toLowerCase() + id + (classes ? "." + classes.split(/\s+/).join(".") : "");
    const source = element.getAttribute("src");
    return name + (source ? ` (${source})` : words ? ` “${words}”` : "");
  };
}

/** What sticks out to the side. */
export function sideways() {
  const faults = [];
  const page = document.documentElement;
  const wide = page.scrollWidth > page.clientWidth;
  const hides = [page, document.body].some((e) => /hidden|clip/.test(getComputedStyle(e).overflowX));
  if (!wide && !hides) return faults;
  const held = (element) => {
    for (let e = element.parentElement; e && e !== document.body; e = e.parentElement) {
      if (getComputedStyle(e).overflowX !== "visible") return true;
    }
    return !!element.closest("[aria-hidden=true]") || !!element.ownerSVGElement;
  };
  const out = [...document.body.querySelectorAll("*")].filter(
    (e) => e.getBoundingClientRect().right > page.clientWidth + 1 && e.checkVisibility({ visibilityProperty: true }) && !held(e),
  );
  const inner = out.filter((e) => !out.some((other) => other !== e && e.contains(other)));
  for (const element of inner.slice(0, 3)) {
    const over = Math.round(element.getBoundingClientRect().right - page.clientWidth);
    faults.push(`${nameOf(element)} sticks out by ${over} px`);
  }
  if (wide && !faults.length) faults.push(`the page is ${page.scrollWidth} px wide in ${page.clientWidth} px`);
  return faults;
}

/** Neighbours that stand on one another, so that nobody can read either. */
export function overlaid() {
  const faults = [];
  const stands = (element) => {
    const style = getComputedStyle(element);
    return !/^inline|contents|none/.test(style.display) && /static|relative/.test(style.position);
  };
  for (const parent of document.body.querySelectorAll("*")) {
    if (parent.closest("svg, script, style, noscript")) continue;
    const told = [...parent.children].filter(
      (e) => e.textContent.trim() && e.checkVisibility({ visibilityProperty: true }) && stands(e),
    );
    for (let at = 1; at < told.length; at += 1) {
      const [one, other] = [told[at - 1], told[at]].map((e) => e.getBoundingClientRect());
      const wide = Math.min(one.right, other.right) - Math.max(one.left, other.left);
      const high = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top);
      const least = Math.min(one.width * one.height, other.width * other.height);
      if (wide > 1 && high > 1 && least > 1 && wide * high > least / 2) {
        faults.push(`${nameOf(told[at])} stands on ${nameOf(told[at - 1])}`);
      }
    }
  }
  return faults.slice(0, 3);
}

/** Letters too small to read: under 12 px, or 11 px as drawn inside a drawing. */
export function smallText() {
  const exempt = ".zones, .ring";
  const faults = new Map();
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const element = node.parentElement;
    if (!node.data.trim() || element.closest(exempt) || element.closest("script, style, title, desc, noscript")) continue;
    if (!element.checkVisibility({ visibilityProperty: true, opacityProperty: true })) continue;
    const box = element.getBoundingClientRect();
    if (box.width <= 1 || box.height <= 1) continue;
    const drawn = element instanceof SVGElement;
    const matrix = drawn ? element.getScreenCTM?.() : null;
    const scale = matrix ? Math.hypot(matrix.a, matrix.b) : 1;
    const size = parseFloat(getComputedStyle(element).fontSize) * scale;
    const least = drawn ? 11 : 12;
    if (size < least - 0.05) faults.set(element, `${nameOf(element)} is set at ${size.toFixed(1)} px; ${least} at least`);
  }
  return [...faults.values()];
}

/** Loads every picture and says what is wrong with it; `below` tells those under the first screen. */
export async function pictures() {
  const found = { broken: [], shape: [], words: [], eagerBelow: [] };
  const settle = (image) =>
    Promise.race([image.decode().catch(() => {}), new Promise((done) => setTimeout(done, 5000))]);
  for (const image of document.images) {
    const name = nameOf(image);
    const top = image.getBoundingClientRect().top + scrollY;
    if (top > innerHeight && image.loading !== "lazy") found.eagerBelow.push(name);
    image.loading = "eager";
    await settle(image);
    if (!image.naturalWidth) found.broken.push(`${name} does not load`);
    const [width, height] = ["width", "height"].map((side) => Number(image.getAttribute(side)));
    if (!width || !height) found.shape.push(`${name} has no width and height`);
    else if (image.naturalWidth) {
      const expected = (width * image.naturalHeight) / image.naturalWidth;
      if (Math.abs(expected - height) > 1 + height * 0.01) {
        found.shape.push(`${name} says ${width} × ${height}, but is ${image.naturalWidth} × ${image.naturalHeight}`);
      }
    }
    const nearby = image.closest("a, figure, li, tr, button, dd, label")?.textContent.trim();
    const hidden = image.closest("[aria-hidden=true], [role=presentation], [role=none]");
    if (image.getAttribute("alt") === null || (!image.alt.trim() && !nearby && !hidden)) {
      found.words.push(`${name} has no alternative text`);
    }
  }
  return found;
}

/** Everything that the page points at, made absolute, and what can be pointed at in it. */
export function pointers() {
  const found = [];
  const add = (element, kind, address) => {
    if (!address) return;
    try {
      found.push({ kind, written: address, url: new URL(address, document.baseURI).href });
    } catch {
      found.push({ kind, written: address, url: null });
    }
  };
  const asks = { a: "href", area: "href", link: "href", script: "src", img: "src", iframe: "src", source: "src", object: "data", form: "action", image: "href", use: "href" };
  for (const [tag, attribute] of Object.entries(asks)) {
    for (const e of document.querySelectorAll(tag)) {
      add(e, tag, e.getAttribute(attribute) ?? e.getAttribute("xlink:" + attribute));
    }
  }
  for (const e of document.querySelectorAll("[srcset]")) {
    for (const candidate of e.srcset.split(/,\s+/)) add(e, "srcset", candidate.trim().split(/\s+/)[0]);
  }
  const ids = [...document.querySelectorAll("[id]")].map((e) => e.id);
  return { found, ids };
}

/** Whether telephones are told to use their own width. */
export function viewport() {
  const content = document.querySelector("meta[name=viewport]")?.content ?? "";
  return content.includes("width=device-width") ? [] : ["no viewport meta with width=device-width"];
}

/** The words a reader sees, and whether a heading is among them; what stands there to be acted upon is left out. */
export function reading() {
  const heading = document.querySelector("h1");
  const count = (element) => element.innerText.split(/\s+/).filter(Boolean).length;
  const acts = [...document.querySelectorAll("[data-acts]")].filter((element) => element.checkVisibility());
  return {
    words: acts.reduce((words, element) => words - count(element), count(document.body)),
    heading: !!heading && heading.checkVisibility({ visibilityProperty: true, opacityProperty: true }),
  };
}

/** Fonts that were asked for and did not come. */
export async function fonts() {
  await document.fonts.ready;
  return [...document.fonts].filter((font) => font.status === "error").map((font) => `the font ${font.family} does not load`);
}

/** What a sheet of paper cuts off at its side, and letters under 7 points; asked while the page is laid out for print. */
export function onPaper() {
  const faults = [], seen = new Set(), POINTS = 96 / 72, LEAST = 7;
  const shown = (element) => element.checkVisibility({ visibilityProperty: true, opacityProperty: true });
  const width = document.documentElement.clientWidth;
  for (const element of document.body.querySelectorAll("table, figure, svg, img, p, h1, h2, h3, dd, li, input")) {
    if (!shown(element) || element.closest("[aria-hidden=true], .sr, .older")) continue;
    const { left, right, width: own } = element.getBoundingClientRect();
    if (own > 1 && (right > width + 1.5 || left < -1.5)) faults.push(`${nameOf(element)} sticks out by ${Math.round(Math.max(right - width, -left))} px`);
  }
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const element = node.parentElement;
    if (!node.data.trim() || seen.has(element) || element.closest("script, style, title, desc, noscript, .sr, .zones") || !shown(element)) continue;
    const box = element.getBoundingClientRect();
    if (box.width <= 1 || box.height <= 1) continue;
    seen.add(element);
    const matrix = element instanceof SVGElement ? element.getScreenCTM?.() : null;
    const size = (parseFloat(getComputedStyle(element).fontSize) * (matrix ? Math.hypot(matrix.a, matrix.b) : 1)) / POINTS;
    if (size < LEAST - 0.05) faults.push(`${nameOf(element)} is set at ${size.toFixed(1)} pt; ${LEAST} at least`);
  }
  // Details are read in the order of their numbers, and none has its heading twice.
  const details = [...document.querySelectorAll(".view")].filter(shown);
  const place = (detail) => detail.getBoundingClientRect();
  const beside = (one, other) => Math.abs(place(one).top - place(other).top) < 8;
  const read = [...details].sort((one, other) => (beside(one, other) ? place(one).left - place(other).left : place(one).top - place(other).top));
  if (read.some((detail, at) => detail !== details[at])) faults.push(`details come in the order ${read.map((detail) => details.indexOf(detail) + 1).join(", ")}`);
  for (const detail of details) {
    const title = detail.querySelector("h2")?.textContent.trim();
    const again = [...detail.parentElement.querySelectorAll(".label")].find((label) => label.textContent.trim() === title);
    if (again) faults.push(`"${title}" is the heading twice`);
  }
  return faults.slice(0, 4);
}
