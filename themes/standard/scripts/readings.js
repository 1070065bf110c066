// The sheet at an opening: readings of the tape, judged at once by the sizes that the sheet asks for, and handed over.
(() => {
  const { data, w, fill, el, state, read, write, now, whole, others, say, lasting } = Paper;
  const asks = data("tape-asks"), place = document.getElementById("readings");
  if (!asks || !place) return;
  const KEPT = `bookmatch ${asks.book ?? asks.title} readings`, HERE = `${asks.room}/${asks.opening}`;
  const BARE = { imperial: "in", metric: "mm" }, WHATS = ["width", "height", "depth"];
  const kept = () => ({ by: "", handed: [], openings: {}, ...(read(KEPT) ?? read(`bookmatch ${asks.title} readings`) ?? {}) });
  const change = (what) => { const all = kept(); what(all); write(KEPT, all); };
  const here = (all) => ({ units: asks.units, lines: {}, ...all.openings[HERE] });
  const words = (length) => {
    const [first, second] = asks.units === "metric" ? [Tape.metric(length), Tape.imperial(length)] : [Tape.imperial(length), Tape.metric(length)];
    const set = (text) => text.replace(/'-/, "′-").replace(/"$/, "″").split(/ ?(\d+\/\d+)/).map((part, at, all) => (at % 2 ? el("i", { class: all[at - 1] ? "fr w" : "fr" }, part) : part + (part && at + 1 < all.length ? "\u00a0" : "")));
    return el("span", { class: "dim" }, ...set(first), " ", el("span", { class: "mm" }, "(", ...set(second), ")"));
  };
  /** A sentence in which `{gap}` is a length. */
  const told = (sentence, gaps) => sentence.split(/(\{\w+\})/).map((part) => gaps[part.slice(1, -1)] ?? part);

  const valid = (text, units) => { const length = Tape.read(text, BARE[units]); return length > 0n ? length : null; };
  const lengths = (all, what) => Object.entries(here(all).lines).filter(([line, text]) => line.startsWith(what) && text.trim())
    .map(([line, text]) => ({ line, length: valid(text, here(all).units) }));
  const judge = (all, what) => {
    const found = lengths(all, what).map((one) => one.length), ask = asks.asks.find((one) => one.what === what) ?? {};
    const name = w.tape[what];
    if (!found.length) return null;
    if (found.includes(null)) return el("li", {}, state("not-measured", fill(w.tape.no_length, { name })));
    const least = found.reduce((one, other) => (other < one ? other : one));
    const [from, to, body] = [ask.least, ask.most, ask.body].map((text) => (text == null ? null : BigInt(text)));
    if (from == null && to == null) return el("li", {}, state("fit-unknown", fill(w.tape.unasked, { name })), " ", words(least));
    if (from != null && least < from) return el("li", {}, state("does-not-fit", fill(w.tape.small, { name })), el("p", {}, ...told(w.tape.small_by, { reading: words(least), gap: words(from - least) })));
    const most = found.reduce((one, other) => (other > one ? other : one));
    if (to != null && most > to) return el("li", {}, state("does-not-fit", fill(w.tape.large, { name })), el("p", {}, ...told(w.tape.large_by, { reading: words(most), gap: words(most - to) })));
    return el("li", {}, state("fits", fill(w.tape.fits, { name })), el("p", {}, ...told(from == null ? w.tape.reads : w.tape.fits_by, { reading: words(least), gap: words(least - (from ?? 0n)) }),
      ...(what === "width" && body != null ? told(w.tape.each_side, { gap: words((least - body) / 2n) }) : [])));
  };
  const verdict = el("ul", { class: "said" }), heard = el("p", { class: "sr", role: "status" }), keeps = el("p", { class: "sans soft" });
  const handing = el("div", { class: "form" });
  const tell = (quiet) => {
    const all = kept(), lines = WHATS.map((what) => judge(all, what)).filter(Boolean);
    verdict.replaceChildren(...lines);
    keeps.textContent = lasting() ? w.tape.kept : w.tape.not_kept;
    if (!quiet) say(heard, lines.map((line) => line.textContent).join(". "));
    for (const input of place.querySelectorAll("input[data-line]")) {
      const wrong = input.value.trim() && valid(input.value, here(all).units) == null;
      input.setAttribute("aria-invalid", wrong ? "true" : "false");
    }
    hand(all);
  };
  const readings = (all) => Object.entries(all.openings).flatMap(([key, one]) => Object.entries(one.lines).map(([line, text]) => {
    const length = valid(text, one.units ?? asks.units), [what, at] = line.split(" "), [room, opening] = JSON.parse(one.of ?? "[]");
    return length && room ? { room, opening, what, at: at ?? null, length: `${length}` } : null;
  })).filter(Boolean);
  const hand = (all) => {
    const found = readings(all);
    if (!asks.book) return handing.replaceChildren(el("p", { class: "sans soft" }, w.tape.no_issue));
    if (!found.length || !all.by.trim()) return handing.replaceChildren(el("p", { class: "sans soft" }, found.length ? w.tape.name_first : w.tape.none));
    let response = all.response;
    const same = response && response.by === whole(all.by.trim()) && Seal.canonical(response.readings) === Seal.canonical(found);
    if (!same) {
      response = { format: "bookmatch readings 1", book: asks.book, issue: asks.issue, by: whole(all.by.trim()), nonce: Seal.nonce(), made: now(), readings: found };
      change((now) => { now.response = response; });
    } else if (handing.querySelector(".ways")) return;
    const name = `bookmatch-${asks.book.slice(0, 8)}-readings-${response.made.slice(0, 10)}.json`;
    handing.replaceChildren(el("p", { class: "sans" }, fill(w.tape.to_hand, { n: found.length, by: response.by })), Hand.ways({ name, text: Seal.canonical(response), to: asks,
      subject: fill(w.tape.subject, { title: asks.title }), list: () => kept().handed,
      done: (how, said) => change((all) => all.handed.push({ how, at: now(), response: response.nonce, told: said || undefined })) }));
  };

  const units = () => el("fieldset", { class: "choice" }, el("legend", { class: "label" }, w.tape.bare), el("div", { class: "boxes" }, ...Object.keys(BARE).map((system) => el("label", {},
    el("input", { type: "radio", name: "units", value: system, checked: here(kept()).units === system, change: () => {
      change((all) => { all.openings[HERE] = { ...here(all), units: system, of: JSON.stringify([asks.room, asks.opening]) }; });
      tell();
    } }), el("b", {}, w.tape[system])))));
  const line = (spot) => {
    const { what, at } = spot.dataset, key = at ? `${what} ${at}` : what, id = `tape-${key.replace(" ", "-")}`;
    const input = el("input", { id, class: "line", inputmode: "text", autocomplete: "off", "data-line": key, maxlength: 40, input: () => {
      change((all) => {
        const one = here(all);
        all.openings[HERE] = { ...one, of: JSON.stringify([asks.room, asks.opening]), lines: { ...one.lines, [key]: input.value } };
      });
      tell();
    } });
    input.value = here(kept()).lines[key] ?? "";
    spot.replaceChildren(el("label", { for: id }, spot.textContent), input);
  };
  const by = (spot) => {
    const input = el("input", { id: "tape-by", class: "line", autocomplete: "name", maxlength: 200, input: () => { change((all) => { all.by = input.value; }); tell(true); } });
    input.value = kept().by;
    spot.replaceChildren(el("label", { for: input.id }, spot.textContent), input);
  };
  place.querySelectorAll("[data-what]").forEach(line);
  place.querySelectorAll("[data-by]").forEach(by);
  place.querySelectorAll("[data-on]").forEach((spot) => spot.classList.add("paper"));
  place.prepend(units());
  place.append(el("div", { class: "form" }, verdict, heard, keeps, handing));
  tell(true);
  others(() => tell());
})();
