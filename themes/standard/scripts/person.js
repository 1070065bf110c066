// Who decides: told by a private link, or asked.
const Person = (() => {
  const { w, fill, el } = Paper;
  const place = (changed) => {
    const is = Answer.who(), link = Answer.link() === "unknown" && el("p", { class: "sans", role: "alert" }, w.act.link_unknown);
    const again = (what) => () => { what(); changed(); };
    if (is && Answer.key()) {
      return el("div", { class: "acts" }, link, el("p", { class: "who" }, fill(w.act.as_linked, { name: is.name })),
        el("button", { type: "button", class: "quiet", click: again(() => Answer.be(null)) }, fill(w.act.not_me, { name: is.name })));
    }
    return el("div", {}, link, el("fieldset", { class: "choice" }, el("legend", { class: "label" }, w.act.who),
      el("div", { class: "boxes" }, ...Answer.asked.approvers.map((one) => el("label", {},
        el("input", { type: "radio", name: "who", value: one.id, change: again(() => Answer.be(one.id)), ...(one.id === is?.id ? { checked: true } : {}) }),
        el("b", {}, one.name))))), el("p", { class: "sans soft" }, w.act.unsigned));
  };
  return { place };
})();
