// The sheet at an opening: readings of the tape, judged at once by the sizes that the sheet asks for, and handed over.
(() => {
  const { data, w, fill, el, state, read, write, now, whole, others, say, scripted, lasting } = Paper;
  const asks = data("tape-asks"), place = document.getElementById("readings");
  if (!asks || !place) return;
  const KEPT = `bookmatch ${asks.book ?? asks.title} readings`, HERE = `${asks.room}/${asks.opening}`;
  const BARE = { imperial: "in", metric: "mm" };
  const kept = () => ({ by: "", handed: [], openings: {}, ...(read(KEPT) ?? read(`bookmatch ${asks.title} readings`) ?? {}) });
  const change = (what) => { const all = kept(); what(all); write(KEPT, all); };
  const MARK = asks.decimal ?? ".";
  const here = (all) => ({ units: asks.units, decimal: MARK, lines: {}, ...all.openings[HERE], ...(asks.alone ? { units: asks.units } : {}) });
  const words = (length) => {
    const [inches, metric] = [Tape.imperial(length), Tape.metric(length, MARK)], [first, other] = asks.units === "metric" ? [metric, inches] : [inches, metric];
    const set = (text) => text.replace(/'-/, "′-").replace(/"$/, "″").split(/ ?(\d+\/\d+)/).map((part, at, all) => (at % 2 ? el("i", { class: all[at - 1] ? "fr w" : "fr" }, part) : part + (part && at + 1 < all.length ? "\u00a0" : "")));
    return el("span", { class: "dim" }, ...set(first), ...(asks.alone ? [] : [" ", el("span", { class: "mm" }, "(", ...set(other), ")")]));
  };
  /** A sentence in which `{gap}` is a length. */
  const told = (sentence, gaps) => sentence.split(/(\{\w+\})/).map((part, at) => (at % 2 ? gaps[part.slice(1, -1)] ?? part : part));

  const valid = (text, { units, decimal }) => { const length = Tape.read(text, BARE[units ?? asks.units], decimal); return length > 0n ? length : null; };
  const NAMES = { width: "width", height: "height", depth: "depth", diagonal: "diagonal", "plumb-left": "plumb", "plumb-right": "plumb" };
  /** What the line of something else than a size is called. */
  const called = (line) => SPOTS.get(line) ?? line;
  const SPOTS = new Map([...place.querySelectorAll("[data-what]")].map((spot) => [[spot.dataset.what, spot.dataset.at].filter(Boolean).join(" "), spot.textContent]));
  /** The faces that the tape was held to here. */
  const chosen = (all) => ({ floor: asks.from?.floor, walls: asks.from?.walls, ...here(all).from });
  const FLOOR = ["height", "sill", "counter-height"], WALLS = ["width", "depth", "plumb-left", "plumb-right", "rough-in", "valve"];
  const face = (what, at, from) => (FLOOR.includes(what) || at === "height" ? from?.floor : WALLS.includes(what) ? from?.walls : undefined);
  /** The lengths that were read, by line, and the names of lines that hold none. */
  const lengths = (all) => {
    const lines = {}, none = new Set();
    for (const [line, text] of Object.entries(here(all).lines)) {
      if (!text.trim()) continue;
      const length = valid(text, here(all));
      if (length == null) none.add(w.tape[NAMES[line.split(" ")[0]]] ?? called(line));
      else lines[line] = length;
    }
    return { lines, none };
  };
  /** `37″ less 3/4″ of floor still to come = 36 1/4″`. */
  const sum = (one) => {
    if (!one.less?.length) return [];
    const less = one.less.flatMap(({ of, length }, at) => [...(at ? told(w.tape.and, {}) : []), ...told(w.tape.to_come, { gap: words(BigInt(length)), of: w.tape.of[of] })]);
    return [el("p", {}, ...told(w.tape.sum, { reading: words(one.read), less: el("span", {}, ...less), sum: words(one.less.reduce((rest, part) => rest - BigInt(part.length), one.read)) }))];
  };
  const VERDICTS = {
    unsure: (one, name) => [state("fit-unknown", fill(w.tape.unsure, { name })), el("p", {}, w.tape.unsure_why[one.why])],
    noted: (one, name) => [state("fit-unknown", fill(w.tape.noted, { name })), el("p", {}, ...told(w.tape.noted_says, { reading: words(one.governs) }))],
    unasked: (one, name) => [state("fit-unknown", fill(w.tape.unasked, { name })), " ", words(one.read)],
    small: (one, name) => [state("does-not-fit", fill(w.tape.small, { name })), el("p", {}, ...told(w.tape.small_by, { reading: words(one.governs), gap: words(one.by) }))],
    large: (one, name) => [state("does-not-fit", fill(w.tape.large, { name })), el("p", {}, ...told(w.tape.large_by, { reading: words(one.governs), gap: words(one.by) }))],
    tight: (one, name) => [state("fits", fill(w.tape.tight, { name })), el("p", {}, ...told(w.tape.tight_by, { gap: words(one.by), wants: words(one.wants) }))],
    fits: (one, name) => [state("fits", fill(w.tape.fits, { name })), el("p", {}, ...told(one.by == null ? w.tape.reads : w.tape.fits_by, { reading: words(one.governs), gap: words(one.by ?? 0n) }),
      ...(one.each == null ? [] : told(w.tape.each_side, { gap: words(one.each) })),
      ...(one.sides ? told(w.tape.at_sides, { left: words(one.sides[0]), right: words(one.sides[1]) }) : []))],
    skew: (one) => [state("does-not-fit", w.tape.skew), el("p", {}, ...told(one.plumb ? w.tape.leans_by : w.tape.skew_by, { gap: words(one.by), wants: words(one.wants) }))],
    square: (one) => [state("fits", w.tape.square), el("p", {}, ...told(w.tape.square_by, { gap: words(one.by), wants: words(one.wants) }))],
  };
  const judged = (all) => {
    const { lines, none } = lengths(all);
    const faulty = [...none].map((name) => el("li", {}, state("not-measured", fill(w.tape.no_length, { name }))));
    if (Measure.isHalf(lines)) faulty.push(el("li", {}, state("not-measured", w.tape.half)));
    const found = Measure.judge(asks, lines, chosen(all)).filter((one) => !none.has(w.tape[one.what]) && !(one.what === "width" && none.has(w.tape.plumb)));
    const item = (one) => {
      const how = one.plumb && one.what === "width" ? [el("p", {}, w.tape.by_plumb)] : [];
      return el("li", {}, ...VERDICTS[one.verdict](one, w.tape[one.what] ?? called(one.what)), ...(one.verdict === "unasked" || one.verdict === "unsure" ? [] : sum(one)), ...how,
        ...(one.above ? [el("p", {}, w.tape.by_above)] : []));
    };
    return { items: [...faulty, ...found.map(item)], found };
  };
  /** The lines in which something is written that this is found of. */
  const linesOf = (one) => {
    const of = one.plumb ? ["plumb-left", "plumb-right"] : one.what === "square" ? ["diagonal"] : [one.what];
    return [...place.querySelectorAll("input[data-line]")].filter((input) => input.value.trim() && of.some((what) => `${input.dataset.line} `.startsWith(`${what} `)));
  };
  /** What is found stands at the line that is being written too: on a telephone the list is far below. */
  const tellAtLines = (found, all) => {
    place.querySelectorAll(".told").forEach((told) => told.remove());
    const tellAt = (input, said) => input?.parentElement.append(el("p", { class: "told", "aria-hidden": "true" }, said));
    for (const one of found) {
      const lines = linesOf(one), here = lines.find((input) => input === document.activeElement);
      tellAt(here ?? lines[lines.length - 1], VERDICTS[one.verdict](one, w.tape[one.what] ?? called(one.what))[0]);
    }
    for (const input of place.querySelectorAll("input[data-line]")) {
      const wrong = input.value.trim() && valid(input.value, here(all)) == null;
      input.setAttribute("aria-invalid", wrong ? "true" : "false");
      const { line } = input.dataset;
      if (wrong) tellAt(input, state("not-measured", fill(w.tape.no_length, { name: w.tape[NAMES[line.split(" ")[0]]] ?? called(line) })));
    }
  };
  const verdict = el("ul", { class: "said" }), heard = el("p", { class: "sr", role: "status" }), keeps = el("p", { class: "sans soft" });
  const handing = el("div", { class: "form" });
  const tell = (quiet) => {
    const all = kept(), { items: lines, found } = judged(all);
    verdict.replaceChildren(...lines);
    keeps.textContent = lasting() ? w.tape.kept : w.tape.not_kept;
    if (!quiet) say(heard, lines.map((line) => line.textContent).join(". "));
    tellAtLines(found, all);
    hand(all);
  };
  const readings = (all) => Object.entries(all.openings).flatMap(([key, one]) => Object.entries(one.lines).map(([line, text]) => {
    const length = valid(text, one), [what, at] = line.split(" "), [room, opening] = JSON.parse(one.of ?? "[]");
    return length && room ? { room, opening, what, at: at ?? null, length: `${length}`, from: face(what, at, one.from) } : null;
  })).filter(Boolean);
  const hand = (all) => {
    const found = readings(all);
    if (!asks.book) return handing.replaceChildren(el("p", { class: "sans soft" }, w.tape.no_issue));
    if (!found.length || !all.by.trim()) return handing.replaceChildren(el("p", { class: "sans soft" }, found.length ? w.tape.name_first : w.tape.none));
    let response = all.response;
    const same = response && response.by === whole(all.by.trim()) && Seal.canonical(response.readings) === Seal.canonical(found);
    if (!same) {
      response = { format: "bookmatch readings 1", book: asks.book, issue: asks.issue, by: whole(all.by.trim()), nonce: Seal.nonce(), made: now(),
        ledger: asks.ledger ?? undefined, readings: found };
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
        // What is written now is written as this page's language writes it.
        all.openings[HERE] = { ...one, decimal: MARK, from: chosen(all), of: JSON.stringify([asks.room, asks.opening]), lines: { ...one.lines, [key]: input.value } };
      });
      tell();
    } });
    input.value = here(kept()).lines[key] ?? "";
    spot.replaceChildren(el("label", { for: id }, spot.textContent), input);
  };
  /** Which floor, or between which faces, was read. */
  const datum = (spot) => {
    const { datum: of } = spot.dataset, faces = [...spot.querySelectorAll("[data-face]")];
    spot.replaceWith(el("fieldset", { class: "choice datum" }, el("legend", { class: "label" }, spot.querySelector("span").textContent), el("div", { class: "boxes" }, ...faces.map((one) => el("label", {},
      el("input", { type: "radio", name: `from-${of}`, value: one.dataset.face, checked: chosen(kept())[of] === one.dataset.face, change: () => {
        change((all) => { all.openings[HERE] = { ...here(all), from: { ...chosen(all), [of]: one.dataset.face }, of: JSON.stringify([asks.room, asks.opening]) }; });
        tell();
      } }), el("b", {}, ...one.childNodes))))));
  };
  const by = (spot) => {
    const input = el("input", { id: "tape-by", class: "line", autocomplete: "name", maxlength: 200, input: () => { change((all) => { all.by = input.value; }); tell(true); } });
    input.value = kept().by;
    spot.replaceChildren(el("label", { for: input.id }, spot.textContent), input);
  };
  scripted();
  place.querySelectorAll("[data-what]").forEach(line);
  place.querySelectorAll("[data-datum]").forEach(datum);
  place.querySelectorAll("[data-by]").forEach(by);
  place.querySelectorAll("[data-on]").forEach((spot) => spot.classList.add("paper"));
  if (!asks.alone) place.prepend(units());
  place.append(el("div", { class: "form" }, verdict, heard, keeps, handing));
  tell(true);
  others(() => tell());
})();
