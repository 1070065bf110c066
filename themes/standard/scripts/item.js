// A selection's page: its decision, kept on this device until it is signed on the sheet for signature.
(() => {
  const { w, el, others, scripted } = Paper;
  const place = document.getElementById("deciding-one");
  if (!place || !Answer) return;
  Answer.takeLink();
  const item = Answer.asked.items[0];
  const show = (focus) => {
    const is = Answer.who();
    const parts = [item.askable ? null : el("p", {}, w.act.not_asked_why), Person.place(() => show(true)), Decision.others(item, is)];
    if (is && item.askable) parts.push(Decision.form(item, pick), el("div", { class: "acts" },
      el("a", { class: "btn screen", href: place.dataset.sign }, w.act.to_sign), el("p", {}, w.act.nothing_sent)));
    place.replaceChildren(...parts.filter(Boolean));
    pick();
    if (focus) place.querySelector("input:checked, button, input")?.focus();
  };
  // A card is chosen by a touch, wherever no link and no word is touched; the boxes below say the same to keys and screen readers.
  const cards = [...document.querySelectorAll("[data-option]")];
  const box = (card) => [...place.querySelectorAll("input")].find((input) => input.name.endsWith(" option") && input.value === card.dataset.option);
  const pick = () => cards.forEach((card) => {
    const input = box(card);
    card.classList.toggle("pickable", !!input);
    card.classList.toggle("picked", !!input?.checked);
    card.querySelector(".pick")?.remove();
    if (input) card.querySelector("header > div").append(el("p", { class: "pick", "aria-hidden": "true" }, el("span", { class: "box" }), input.checked ? w.act.picked : w.act.pick));
  });
  for (const card of cards) {
    card.addEventListener("click", (event) => {
      if (!event.target.closest("a, button") && !String(getSelection())) box(card)?.click();
    });
  }
  // What is written by hand stays for paper: the lines for signatures.
  for (const part of document.getElementById("on-paper").children) {
    if (part.matches(".lines")) part.classList.add("paper");
    else part.hidden = true;
  }
  document.querySelector("#decide + p").textContent = w.act.yours_scope;
  scripted();
  place.hidden = false;
  show();
  others(() => show());
  addEventListener("hashchange", () => { if (Answer.takeLink()) show(); });
})();
