// A signature drawn with pen, finger or mouse, as the path of an SVG in whole numbers.
const Pen = (() => {
  const { w, el, svg } = Paper;
  const [WIDE, HIGH] = [600, 160];
  /** As many letters as a response may hold; a longer drawing stops there. */
  const MOST = 20000;
  const pad = (drawing, changed) => {
    let path = drawing, last = null;
    const ink = svg("path", { d: path });
    const sheet = svg("svg", { class: "pad", viewBox: `0 0 ${WIDE} ${HIGH}`, role: "img", "aria-label": w.signs.draw }, svg("path", { class: "rule", d: `M20 ${HIGH - 36}H${WIDE - 20}` }), ink);
    const to = (letter, event) => {
      const at = sheet.getBoundingClientRect();
      const point = [(event.clientX - at.left) / at.width * WIDE, (event.clientY - at.top) / at.height * HIGH].map((n) => Math.max(0, Math.round(n)));
      if (letter === "L" && last && Math.hypot(point[0] - last[0], point[1] - last[1]) < 2) return;
      const next = `${letter}${point[0]} ${point[1]}`;
      if (path.length + next.length > MOST) return;
      last = point;
      path += next;
      ink.setAttribute("d", path);
    };
    sheet.addEventListener("pointerdown", (event) => {
      if (event.button) return;
      event.preventDefault();
      sheet.setPointerCapture(event.pointerId);
      to("M", event);
      // A dot is a stroke too.
      const dot = last && `L${last[0] + 1} ${last[1]}`;
      if (dot && path.length + dot.length <= MOST) path += dot;
      ink.setAttribute("d", path);
    });
    sheet.addEventListener("pointermove", (event) => {
      if (sheet.hasPointerCapture(event.pointerId)) (event.getCoalescedEvents?.() ?? [event]).forEach((one) => to("L", one));
    });
    const up = () => { if (last) changed(path); last = null; };
    sheet.addEventListener("pointerup", up);
    sheet.addEventListener("pointercancel", up);
    const clear = el("button", { type: "button", class: "quiet", click: () => { path = ""; ink.setAttribute("d", ""); changed(""); } }, w.signs.clear);
    return el("div", {}, el("p", { class: "label", "aria-hidden": "true" }, w.signs.draw), sheet, clear);
  };
  /** A drawing to look at. */
  const drawn = (path) => svg("svg", { class: "pad drawn", viewBox: `0 0 ${WIDE} ${HIGH}`, role: "img", "aria-label": w.signs.drawn }, svg("path", { d: path }));
  return { pad, drawn };
})();
