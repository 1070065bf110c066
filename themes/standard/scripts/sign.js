// The sheet for signature: what was decided, how it adds up, the signature, and handing it over.
(() => {
  const { w, fill, el, mark, moment, day, state, write, others, say, scripted } = Paper;
  const parts = Object.fromEntries(["deciding", "running", "signing", "handing"].map((id) => [id, document.getElementById(id)]));
  const acts = document.getElementById("acts");
  if (!acts || !Answer) return;
  const asked = Answer.asked, askable = asked.items.filter((item) => item.askable);
  Answer.takeLink();
  const root = acts.dataset.root;
  const body = (id, ...inside) => parts[id].querySelector(".body").replaceChildren(...inside.filter(Boolean));

  const row = (item) => {
    const form = el("div", { class: "inner" }), shown = el("span", { class: "shown" });
    const summary = el("summary", {}, el("b", {}, item.name), el("small", {}, `${item.tag} · ${mark(item.mark)}`), shown, ...Decision.against(item));
    const tell = () => shown.replaceChildren(Decision.shown(item, Answer.state()));
    const line = el("details", { name: "decision", toggle: () => {
      if (!line.open || form.childElementCount) return;
      const see = el("p", { class: "sans" }, el("a", { href: root + item.page }, fill(w.signs.see, { name: item.name })));
      const known = Decision.others(item, Answer.who());
      form.append(see, ...[known, item.askable ? Decision.form(item, () => { tell(); reckon(); }) : el("p", {}, w.act.not_asked_why)].filter(Boolean));
    } }, summary, form);
    tell();
    return el("li", {}, line);
  };
  const decide = () => body("deciding", Person.place(() => { show(); parts.deciding.querySelector("input:checked, button")?.focus(); }),
    dropped(), ...(Answer.who() ? rooms() : []), foot);
  const rooms = () => [...new Set(asked.items.map((item) => item.room))].map((room) => {
    const items = asked.items.filter((item) => item.room === room);
    return el("div", {}, el("h3", { class: "label" }, items[0]["room name"]), el("ul", { class: "asked" }, ...items.map(row)));
  });
  const dropped = () => {
    const gone = Answer.state().dropped, names = asked.items.filter((item) => gone[Answer.name(item)]).map(called);
    return names.length ? el("div", { class: "caution" }, el("p", { class: "label" }, w.signs.changed), el("p", {}, fill(w.signs.changed_why, { names: names.join("; ") }))) : null;
  };

  const allowance = (one) => {
    const left = one.allowed - one.drawn, over = left < 0n;
    const rest = (left) => fill(left < 0n ? w.signs.rest_over : w.signs.rest_left, { rest: Sums.money(left < 0n ? -left : left) });
    const [dearest, cheapest] = [rest(left - one.open.most), rest(left - one.open.least)];
    const open = one.open.priced ? `; ${fill(dearest === cheapest ? w.signs.with_open : w.signs.with_open_range, { dearest, cheapest })}` : "";
    return el("div", {}, el("dt", {}, one.name), el("dd", {}, fill(over ? w.signs.over : w.signs.left,
      { drawn: Sums.money(one.drawn), allowed: Sums.money(one.allowed), rest: Sums.money(over ? -left : left) }) + open));
  };
  /** What is still open, and what it may add. */
  const besides = ({ count, least, most, priced }) => {
    if (!count) return "";
    return `; ${fill(priced ? (least === most ? w.signs.and_open_at : w.signs.and_open) : w.signs.and_unpriced, { n: count, least: Sums.money(least), most: Sums.money(most) })}`;
  };
  const open = (item) => {
    const late = item.due && item.due < Paper.now().slice(0, 10);
    const words = [item.due && fill(late ? w.signs.overdue : w.signs.due, { day: day(item.due) }), item["holds up"] && fill(w.signs.holds, { what: item["holds up"] })].filter(Boolean);
    return el("li", {}, el("a", { href: root + item.page }, called(item)), words.length ? `. ${words.join("; ")}.` : "");
  };
  /** What each other approver decided, as far as the book knew, and what the two of them do not agree on. */
  const together = (kept) => asked.approvers.filter((one) => one.id !== Answer.who()?.id).map((one) => {
    const of = (item) => item.decided.find((said) => said.who === one.id && said.state !== "stale");
    const apart = askable.filter((item) => {
      const mine = kept.items[Answer.name(item)], said = of(item);
      if (!said || Answer.lacks(item, mine)) return false;
      const agrees = Answer.agrees(said);
      return agrees !== Answer.agrees(mine) || (agrees && (said.option ?? item.chosen ?? "") !== (mine.option ?? item.chosen ?? ""));
    });
    const count = fill(w.signs.so_many, { n: askable.filter(of).length, all: askable.length });
    return fact(one.name, el("span", {}, count, apart.length ? el("b", {}, ` ${fill(w.signs.apart, { names: apart.map(called).join("; ") })}`) : ""));
  });
  const called = (item) => `${item.name}, ${item.tag}`;
  const foot = el("p", { class: "foot", "aria-hidden": "true" });
  const heard = el("p", { class: "sr", role: "status" });
  let figures = null;
  const reckon = (quiet) => {
    const kept = Answer.state(), done = Answer.decided(kept), sums = Sums.of(kept);
    const before = askable.filter((item) => Answer.recorded(item, kept));
    const waiting = askable.filter((item) => !done.includes(item) && !before.includes(item)).sort((one, other) => ((one.due ?? "9") < (other.due ?? "9") ? -1 : 1));
    const count = fill(w.signs.so_many, { n: done.length + before.length, all: askable.length });
    const agreed = Sums.money(sums.agreed) + (sums.unpriced ? `; ${fill(w.signs.unpriced, { n: sums.unpriced })}` : "") + besides(sums.open);
    const by = Object.entries(grouped(done, kept));
    figures.replaceChildren(
      el("dl", { class: "facts" }, fact(w.signs.decided, count), fact(w.signs.agreed, agreed), ...sums.allowances.map(allowance), ...(Answer.who() ? together(kept) : [])),
      el("div", {}, by.length ? el("ul", { class: "counts" }, ...by.map(([word, items]) => el("li", {}, state(Decision.shape(word), `${Decision.word(word)}: ${items.length}`)))) : "",
        el("p", { class: "label still" }, waiting.length ? w.signs.still : w.signs.none_open), el("ul", { class: "open" }, ...waiting.map(open))));
    foot.replaceChildren(el("span", {}, count), el("span", {}, agreed));
    foot.hidden = !Answer.who();
    if (!quiet) { say(heard, `${count}. ${w.signs.agreed}: ${agreed}.`); sign(); hand(); }
  };
  const grouped = (items, kept) => items.reduce((all, item) => { (all[kept.items[Answer.name(item)].decision] ??= []).push(item); return all; }, {});
  const fact = (name, value) => el("div", {}, el("dt", {}, name), el("dd", {}, value));

  const signedLine = (one) => {
    const item = asked.items.find((other) => Answer.name(other) === Answer.name(one));
    return el("li", {}, el("b", {}, `${item?.name ?? one.item}${item ? `, ${item.tag}` : ""}`), " ", el("span", { class: "mark" }, mark(one.mark)), " ",
      state(Decision.shape(one.decision), Decision.word(one.decision) + (one.option ? `: ${Decision.optionName(item, one.option)}` : "")), one.note && el("p", { class: "sans" }, `“${one.note}”`),
      ...(item && Answer.agrees(one) ? Decision.fits(item, (option) => option.fit.shape === "does-not-fit" && (item.options.length === 1 || option.id === (one.option ?? item.chosen))) : []));
  };
  const typed = () => `bookmatch ${asked.book} typed ${Answer.who()?.id}`;
  const pending = () => Paper.read(typed()) ?? { name: "", drawing: "" };
  const sign = () => {
    const kept = Answer.state(), done = Answer.decided(kept);
    if (!Answer.who()) return body("signing", el("p", {}, w.signs.who_first));
    if (kept.response) return body("signing", ...signature(kept.response));
    if (!done.length) return body("signing", kept.changed && el("p", {}, w.signs.sign_again), el("p", {}, w.signs.nothing_to_sign));
    const press = form.querySelector("button[type=submit]");
    form.lines.replaceChildren(...done.map((item) => signedLine({ ...kept.items[Answer.name(item)], room: item.room, item: item.item })));
    press.textContent = fill(w.signs.sign_these, { n: done.length });
    form.again.textContent = kept.changed ? w.signs.sign_again : "";
    if (!parts.signing.contains(form)) body("signing", form);
  };
  const issue = fill(w.signs.of_issue, { n: asked.issue, title: asked.title });
  const signature = (response) => [el("p", {}, response.signed.statement), el("p", { class: "sans" }, `${issue} ${fill(w.signs.signed_as, { name: response.signed.name, at: moment(response.made) })}`),
    response.signed.drawing && Pen.drawn(response.signed.drawing), el("ul", { class: "said" }, ...response.items.map(signedLine)), el("p", { class: "sans soft" }, w.signs.may_change)];
  let form = null;
  const signForm = () => {
    const before = pending(), is = Answer.who()?.id, lines = el("ul", { class: "said" }), again = el("p", {}), wrong = el("p", { class: "sans", id: "no-name" });
    const keep = (what) => write(typed(), { ...pending(), ...what });
    const name = el("input", { id: "typed", class: "line", autocomplete: "name", maxlength: 200, "aria-describedby": "no-name", required: true, input: () => keep({ name: name.value }) });
    name.value = before.name;
    form = el("form", { class: "form", novalidate: true, submit: (event) => {
      event.preventDefault();
      // Somebody else was named meanwhile, in another window: what is signed is what is seen.
      if (Answer.who()?.id !== is) { show(); return; }
      if (!name.value.trim()) { wrong.textContent = w.signs.no_name; name.setAttribute("aria-invalid", "true"); name.focus(); return; }
      Answer.sign(name.value, pending().drawing);
      if (!Answer.state().response) { wrong.textContent = w.signs.too_large; return; }
      write(typed(), { name: "", drawing: "" });
      show();
      title.focus();
    } }, again, el("p", {}, Answer.statement()), el("p", { class: "sans" }, issue), lines,
    el("div", { class: "pens" }, el("div", {}, el("label", { class: "label", for: "typed" }, w.signs.typed), name, wrong), Pen.pad(before.drawing, (drawing) => keep({ drawing }))),
    el("div", { class: "acts" }, el("button", { type: "submit", class: "btn" }), el("p", {}, w.signs.sign_how)));
    Object.assign(form, { lines, again });
  };

  const hand = () => {
    const kept = Answer.state(), response = kept.response;
    if (!response) return body("handing", el("p", {}, w.signs.sign_first), Hand.past(kept.handed));
    const named = (name) => { const item = asked.items.find((one) => Answer.name(one) === name); return item ? called(item) : name; };
    const name = `bookmatch-${asked.book.slice(0, 8)}-issue-${asked.issue}-${response.who.replace(/[^\w-]/g, "_")}.json`;
    body("handing", el("p", {}, response.mac ? w.hand.sealed : w.hand.unsealed), Hand.ways({ name, text: Seal.canonical(response), to: asked,
      subject: fill(w.hand.subject, { title: asked.title, n: asked.issue }), list: () => Answer.state().handed, called: named,
      done: (how, told) => Answer.change((now) => now.handed.push({ how, at: Paper.now(), response: response.nonce, told: told || undefined })) }));
  };

  const title = document.getElementById("handing-title");
  title.tabIndex = -1;
  const show = () => {
    signForm();
    decide();
    figures = el("div", { class: "cols even" });
    body("running", figures, heard);
    reckon(true);
    sign();
    hand();
  };
  scripted();
  acts.hidden = false;
  document.getElementById("signatures")?.closest("section").classList.add("paper");
  show();
  others(show);
  addEventListener("hashchange", () => { if (Answer.takeLink()) show(); });
})();
