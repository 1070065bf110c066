// A selection's page: its decision, kept on this device until it is signed on the sheet for signature.
(() => {
  const { w, el, others } = Paper;
  const place = document.getElementById("deciding-one");
  if (!place || !Answer) return;
  Answer.takeLink();
  const item = Answer.asked.items[0];
  const show = (focus) => {
    const is = Answer.who();
    const parts = [item.askable ? null : el("p", {}, w.act.not_asked_why), Person.place(() => show(true)), Decision.others(item, is)];
    if (is && item.askable) parts.push(Decision.form(item, () => {}), el("div", { class: "acts" },
      el("a", { class: "btn screen", href: place.dataset.sign }, w.act.to_sign), el("p", {}, w.act.nothing_sent)));
    place.replaceChildren(...parts.filter(Boolean));
    if (focus) place.querySelector("input:checked, button, input")?.focus();
  };
  // What is written by hand stays for paper: the lines for signatures.
  for (const part of document.getElementById("on-paper").children) {
    if (part.matches(".lines")) part.classList.add("paper");
    else part.hidden = true;
  }
  document.querySelector("#decide + p").textContent = w.act.yours_scope;
  place.hidden = false;
  show();
  others(() => show());
  addEventListener("hashchange", () => { if (Answer.takeLink()) show(); });
})();
