// The decision of one item: boxes to cross, a note, and what is kept of it.
const Decision = (() => {
  const { w, fill, el, state, say, moment, lasting } = Paper;
  const WORDS = ["approved", "approved as noted", "revise and resubmit", "rejected"];
  const shape = (words) => words.replace(/ /g, "-");
  const word = (words) => w.state[words.replace(/ /g, "_")];
  const letter = (at) => String.fromCharCode(65 + (at % 26));
  const optionName = (item, id) => {
    const at = item.options.findIndex((option) => option.id === id);
    return at < 0 ? id : `${letter(at)}, ${item.options[at].name}`;
  };
  const boxes = (legend, group, rows, crossed, change) => el("fieldset", { class: "choice" }, el("legend", { class: "label" }, legend),
    el("div", { class: `boxes of-${rows.length > 6 ? "many" : rows.length}` }, ...rows.map((row) => el("label", {},
      el("input", { type: "radio", name: group, value: row.value, change, ...(row.value === crossed ? { checked: true } : {}) }),
      el("b", {}, row.name), row.about && el("small", {}, row.about)))));
  /** The state of an item for the one who decides. */
  const shown = (item, kept) => {
    const said = kept.items[Answer.name(item)], before = item.askable && Answer.recorded(item, kept);
    if (before) return state(shape(before.decision), `${word(before.decision)}; ${w.act.is_holds}`);
    const lack = Answer.lacks(item, said);
    if (!item.askable) return state("changed-since-signed", w.act.not_asked);
    if (lack === "decision") return state("waiting", said ? w.act.begun : w.act.open);
    return lack ? state("waiting", w.act[`wants_${lack}`]) : state(shape(said.decision), word(said.decision));
  };
  /** What others decided, as far as the book knew when it was published. */
  const others = (item, is) => {
    const known = item.decided.map((one) => {
      const name = one.who === is?.id ? w.act.you : Answer.asked.approvers.find((who) => who.id === one.who)?.name ?? one.who;
      const told = [word(one.decision), one.option && optionName(item, one.option), w.act[`is_${one.state}`]].filter(Boolean).join("; ");
      return el("li", {}, state(one.state === "stale" ? "changed-since-signed" : shape(one.decision), `${name}: ${told}`),
        one.note && el("p", { class: "sans" }, `“${one.note}”`));
    });
    return known.length ? el("ul", { class: "said" }, ...known) : null;
  };
  /** Whether each option fits; of a thing with no choice, the thing itself. `only` may leave some out. */
  const fits = (item, only = () => true) => item.options.map((option, at) => option.fit && only(option) && el("small", { class: "fits" },
    item.options.length > 1 && el("b", {}, `${letter(at)}, ${option.name}: `), state(option.fit.shape, option.fit.word), ` ${option.fit.sentence}`)).filter(Boolean);
  const against = (item) => fits(item, (option) => option.fit.shape === "does-not-fit" && (!item.chosen || option.id === item.chosen));
  const form = (item, changed) => {
    const of = Answer.name(item), said = Answer.state().items[of] ?? {};
    const kept = el("p", { class: "sans soft", role: "status" });
    const field = (group) => box.querySelector(`input[name="${of} ${group}"]:checked`)?.value;
    const tell = () => {
      const now = Answer.state(), mine = now.items[of], lack = Answer.lacks(item, mine);
      const words = [];
      if (now.dropped[of]) words.push(w.act.dropped);
      if (mine && lack !== "decision" && lack) words.push(w.act[`wants_${lack}`] + ".");
      if (mine) words.push(fill(lasting() ? w.act.kept : w.act.not_kept, { at: moment(mine.at) }));
      kept.textContent = words.join(" ");
      take.hidden = !mine;
    };
    const change = () => {
      const decision = field("says");
      let option = field("option");
      // The page shows which one the book has chosen: to approve the item is to approve that one.
      if (!option && item.chosen && decision && Answer.agrees({ decision }) && item.options.length > 1) {
        option = item.chosen;
        box.querySelectorAll(`input[name="${of} option"]`).forEach((input) => { input.checked = input.value === option; });
      }
      Answer.decide(item, { decision, option, note: note.value });
      tell();
      changed(item);
    };
    const note = el("textarea", { id: `note ${of}`.replace(/\W/g, "-"), class: "written", rows: 3, maxlength: 4000, input: change });
    note.value = said.note ?? "";
    const take = el("button", { type: "button", class: "quiet", click: () => {
      box.querySelectorAll("input").forEach((input) => { input.checked = false; });
      note.value = "";
      change();
      box.querySelector("input")?.focus();
    } }, w.act.take_back);
    const options = item.options.map((option, at) => ({ value: option.id, name: `${letter(at)}, ${option.name}`,
      about: [option.price && Sums.money(Sums.read(option.price)), option.id === item.chosen && w.item.chosen, option.fit && `${option.fit.word}: ${option.fit.sentence}`].filter(Boolean).join(" · ") }));
    const box = el("div", { class: "form" },
      ...(options.length > 1 ? [] : fits(item)),
      options.length > 1 && boxes(w.item.which, `${of} option`, options, said.option, change),
      boxes(w.item.say, `${of} says`, WORDS.map((value) => ({ value, name: word(value), about: w.item[value.replace(/ /g, "_")] })), said.decision, change),
      el("div", {}, el("label", { class: "label", for: note.id }, w.item.note), note),
      el("div", { class: "acts" }, take, kept));
    tell();
    return box;
  };
  return { form, shown, others, against, fits, optionName, word, shape };
})();
