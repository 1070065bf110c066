// Says that an issue came to hand: one button on a trade's page, handed over as readings are.
(() => {
  const { data, w, fill, el, read, write, now, moment, whole, others, scripted } = Paper;
  const asks = data("holding-asks"), place = document.getElementById("acknowledge");
  if (!asks || !place) return;
  const KEPT = `bookmatch ${asks.book} holding`;
  const kept = () => ({ by: "", handed: [], ...(read(KEPT) ?? {}) });
  const change = (what) => { const all = kept(); what(all); write(KEPT, all); };
  const heard = el("p", { class: "sans", role: "status" }), handing = el("div", {});
  const input = el("input", { id: "holding-by", class: "line", autocomplete: "name", maxlength: 200, input: () => { change((all) => { all.by = input.value; }); tell(); } });
  const acknowledge = () => {
    const by = whole(kept().by.trim());
    if (!by) { heard.textContent = w.holding.name_first; input.focus(); return; }
    change((all) => {
      const same = all.response?.issue === asks.issue && all.response?.by === by;
      all.response = same ? all.response : { format: "bookmatch acknowledgement 1", book: asks.book, issue: asks.issue, ledger: asks.ledger ?? undefined, by, nonce: Seal.nonce(), made: now() };
    });
    tell();
  };
  const button = el("button", { type: "button", class: "btn plain", click: acknowledge }, fill(w.holding.button, { issue: asks.issue }));
  const tell = () => {
    const { response, by } = kept(), mine = response?.issue === asks.issue && response.by === whole(by.trim());
    button.hidden = mine;
    heard.textContent = mine ? fill(w.holding.said, { issue: asks.issue, by: response.by, at: moment(response.made) }) : "";
    if (!mine) return handing.replaceChildren();
    if (handing.firstChild) return;
    const name = `bookmatch-${asks.book.slice(0, 8)}-issue-${asks.issue}-came.json`;
    handing.replaceChildren(Hand.ways({ name, text: Seal.canonical(response), to: asks, subject: fill(w.holding.subject, { title: asks.title, issue: asks.issue }), list: () => kept().handed,
      done: (how, said) => change((all) => all.handed.push({ how, at: now(), response: response.nonce, told: said || undefined })) }));
  };
  scripted();
  input.value = kept().by;
  place.replaceChildren(el("div", { class: "form" }, el("div", {}, el("label", { for: input.id, class: "label" }, w.holding.by), input), button, heard, handing));
  tell();
  others(tell);
})();
