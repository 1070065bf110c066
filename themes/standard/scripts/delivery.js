// The page of a delivery: what came beside what was approved, kept on this device and handed over.
(() => {
  const { data, w, fill, el, state, read, write, turn, now, day, whole, others, say, scripted, lasting } = Paper;
  const asks = data("delivery-asks"), place = document.getElementById("delivery");
  if (!asks || !place) return;
  const CAME = ["approved", "different", "damaged"], KEPT_AS = { taken: "taken", "sent back": "sent_back", "set aside": "set_aside" };
  const SHAPE = { approved: "approved", different: "revise-and-resubmit", damaged: "rejected" };
  const KEPT = `bookmatch ${asks.book ?? asks.title} delivery ${JSON.stringify([asks.from, asks.load ?? ""])}`;
  // A photograph that is larger has no digest: a telephone would take too long over it.
  const LARGEST = 24 * 1024 * 1024;
  const kept = () => ({ by: "", note: "", handed: [], items: {}, ...(read(KEPT) ?? {}) });
  const change = (what) => { const all = kept(); what(all); write(KEPT, all); };
  const keyOf = (one) => `${one.room}/${one.item}`;
  const answer = (all, one) => ({ lines: {}, words: {}, kept: "", note: "", photos: [], ...all.items[keyOf(one)] });
  const put = (one, what) => { change((all) => { const own = answer(all, one); what(own); all.items[keyOf(one)] = own; }); tell(); };
  const today = () => now().slice(0, 10);
  const names = w.delivery.of;

  const shots = asks.photographs, keyOfShot = (photo) => `${KEPT} ${photo.sha256}`;
  let looked = false;
  const allShots = (all) => asks.items.flatMap((one) => answer(all, one).photos);
  const carried = (all) => allShots(all).filter((photo) => photo.bytes);
  /** Finds what this device keeps of the photographs; of one that it lost, the name alone is left. */
  const find = async () => {
    const lost = new Set();
    for (const photo of carried(kept())) if (!(await Photographs.find(keyOfShot(photo)))) lost.add(photo.sha256);
    if (lost.size) {
      change((all) => asks.items.forEach((one) => {
        const own = answer(all, one);
        own.photos = own.photos.map((photo) => (lost.has(photo.sha256) ? { name: photo.name } : photo));
        if (own.photos.length) all.items[keyOf(one)] = own;
      }));
    }
    looked = true;
    drawShots.forEach((draw) => draw());
    tell(true);
  };
  const drawShots = [];

  const isBegun = (own) => Object.keys(own.lines).length > 0;
  const otherwise = (one, own) => one.looks.filter((of) => own.lines[of] && own.lines[of] !== "approved");
  /** What is still to be said of an item; nothing once it is said whole. */
  const missing = (one, own) => {
    const open = one.looks.filter((of) => !own.lines[of]).map((of) => names[of]);
    if (open.length) return fill(w.delivery.look_at, { name: one.name, what: open.join(", ") });
    const untold = otherwise(one, own).find((of) => own.lines[of] === "different" && !(own.words[of] ?? "").trim());
    if (untold) return fill(w.delivery.say_what, { name: one.name, what: names[untold] });
    return otherwise(one, own).length && !own.kept ? fill(w.delivery.say_kept, { name: one.name }) : null;
  };
  const worst = (one, own) => CAME[Math.max(0, ...one.looks.map((of) => CAME.indexOf(own.lines[of])))];
  const claim = (one) => {
    const last = one.claim && asks.claims[one.claim]?.[today()];
    return last ? fill(w.delivery.claim_by, { day: day(last) }) : one.claim ? fill(w.delivery.claim_term, { term: one.claim }) : w.delivery.claim_ask;
  };
  const verdict = el("ul", { class: "said" }), heard = el("p", { class: "sr", role: "status" }), keeps = el("p", { class: "sans soft" }), handing = el("div", { class: "form" });
  const told = (all) => asks.items.filter((one) => isBegun(answer(all, one))).map((one) => {
    const own = answer(all, one), open = missing(one, own);
    if (open) return el("li", {}, state("waiting", open));
    const how = worst(one, own), bad = how !== "approved";
    return el("li", {}, state(SHAPE[how], `${one.name}: ${w.delivery.came[how]}`),
      bad && el("p", {}, own.kept === "taken" ? w.delivery.taken_means : w.delivery.not_set), bad && el("p", {}, claim(one)));
  });
  const trimmed = (text) => whole((text ?? "").trim()) || undefined;
  const items = (all) => asks.items.filter((one) => isBegun(answer(all, one))).map((one) => {
    const own = answer(all, one), bad = otherwise(one, own).length > 0;
    return { room: one.room, item: one.item, option: one.option ?? undefined, mark: one.mark,
      lines: one.looks.map((of) => ({ of, came: own.lines[of], words: own.lines[of] === "approved" ? undefined : trimmed(own.words[of]) })),
      kept: bad ? own.kept : undefined, note: trimmed(own.note), photos: own.photos.length ? own.photos : undefined };
  });
  const hand = (all) => {
    const begun = asks.items.filter((one) => isBegun(answer(all, one))), open = begun.some((one) => missing(one, answer(all, one)));
    const no = (words) => handing.replaceChildren(el("p", { class: "sans soft" }, words));
    if (!looked) return no(w.delivery.photos_at_work);
    if (!asks.book) return no(w.delivery.no_issue);
    if (!begun.length) return no(w.delivery.none);
    if (open) return no(w.delivery.not_whole);
    if (!all.by.trim() || !all.note.trim()) return no(w.delivery.name_first);
    const delivery = { from: asks.from, load: asks.load ?? undefined, note: whole(all.note.trim()) }, by = whole(all.by.trim()), found = items(all);
    let response = all.response;
    const same = response && Seal.canonical([response.by, response.delivery, response.items]) === Seal.canonical([by, delivery, found]);
    if (!same) {
      response = { format: "bookmatch delivery 1", book: asks.book, issue: asks.issue, ledger: asks.ledger ?? undefined, delivery, by, nonce: Seal.nonce(), made: now(), device: turn(asks.book, Seal.nonce), items: found };
      change((all) => { all.response = response; });
    } else if (handing.querySelector(".ways")) return;
    const name = `bookmatch-${asks.book.slice(0, 8)}-delivery-${response.made.slice(0, 10)}.json`;
    const named = found.flatMap((one) => one.photos ?? []), alone = named.some((photo) => !photo.bytes);
    const shown = named.filter((photo) => photo.bytes).map((photo) => [photo.sha256, Photographs.text(keyOfShot(photo))]);
    const together = shown.length ? { ...response, photographs: Object.fromEntries(shown) } : response;
    handing.replaceChildren(el("p", { class: "sans" }, fill(w.delivery.to_hand, { n: found.length, by })), shown.length ? el("p", { class: "sans" }, fill(w.delivery.photos_with, { n: shown.length })) : "", alone ? el("p", { class: "sans" }, w.delivery.photos_beside) : "",
      Hand.ways({ name, text: Seal.canonical(together), to: asks, subject: fill(w.delivery.subject, { title: asks.title, note: delivery.note }), list: () => kept().handed,
        done: (how, said) => { change((all) => all.handed.push({ how, at: now(), response: response.nonce, told: said || undefined })); again.hidden = false; } }));
  };
  const again = el("button", { type: "button", class: "quiet", hidden: true, click: () => {
    const gone = carried(kept());
    change((all) => { all.items = {}; all.note = ""; delete all.response; });
    Promise.all(gone.map((photo) => Photographs.drop(keyOfShot(photo)))).then(() => location.reload());
  } }, w.delivery.another);

  const tell = (quiet) => {
    const all = kept(), lines = told(all);
    verdict.replaceChildren(...lines);
    keeps.textContent = lasting() && Photographs.lasting() ? w.delivery.kept_here : w.delivery.not_kept;
    again.hidden = !all.handed.length;
    if (!quiet) say(heard, lines.map((line) => line.textContent).join(". "));
    for (const section of place.querySelectorAll("[data-at]")) show(section, asks.items[section.dataset.at], all);
    hand(all);
  };
  const show = (section, one, all) => {
    const own = answer(all, one);
    for (const input of section.querySelectorAll("input[data-of]")) input.checked = own.lines[input.dataset.of] === input.value;
    for (const input of section.querySelectorAll("input[data-kept]")) input.checked = own.kept === input.value;
    for (const words of section.querySelectorAll("[data-words]")) words.hidden = !own.lines[words.dataset.words] || own.lines[words.dataset.words] === "approved";
    section.querySelectorAll("[data-fate]").forEach((fate) => { fate.hidden = !otherwise(one, own).length; });
  };
  const choice = (legend, name, values, attribute, picked) => el("fieldset", { class: "choice" }, el("legend", { class: "label" }, legend),
    el("div", { class: "boxes" }, ...values.map(([value, word]) => el("label", {}, el("input", { type: "radio", name, value, ...attribute, change: () => picked(value) }), el("b", {}, word)))));
  const written = (label, id, value, typed) => {
    const input = el("input", { id, class: "line", autocomplete: "off", maxlength: 200, input: () => typed(input.value) });
    input.value = value;
    return [el("label", { for: id, class: "label" }, label), input];
  };
  const digest = async (file) => {
    if (file.size > LARGEST) return undefined;
    try { return Seal.hex(Seal.sha256(new Uint8Array(await file.arrayBuffer()))); } catch { return undefined; }
  };
  /** A photograph as it goes with the delivery; its name alone, and why, where it can't. */
  const taken = async (file) => {
    const name = whole(file.name).slice(0, 200), all = carried(kept()), size = all.reduce((sum, photo) => sum + photo.bytes, 0);
    if (all.length >= shots.most) return { photo: { name, sha256: await digest(file) }, why: fill(w.delivery.photo_many, { name }) };
    const bytes = await Photographs.small(file, shots);
    if (!bytes) return { photo: { name, sha256: await digest(file) }, why: fill(w.delivery.photo_unread, { name }) };
    if (size + bytes.length > shots.together) return { photo: { name, sha256: await digest(file) }, why: fill(w.delivery.photo_many, { name }) };
    const photo = { name, sha256: Seal.hex(Seal.sha256(bytes)), bytes: bytes.length };
    await Photographs.keep(keyOfShot(photo), Photographs.base64(bytes));
    return { photo };
  };
  const photos = (one, id) => {
    const list = el("ul", { class: "shots plain" }), told = el("p", { class: "heard", role: "status" });
    const remove = (photo) => {
      put(one, (own) => { own.photos = own.photos.filter((other) => other.name !== photo.name || other.sha256 !== photo.sha256); });
      if (photo.bytes && !carried(kept()).some((other) => other.sha256 === photo.sha256)) Photographs.drop(keyOfShot(photo));
      told.textContent = "";
      draw();
      input.focus();
    };
    const draw = () => list.replaceChildren(...answer(kept(), one).photos.map((photo) => {
      const text = photo.bytes && Photographs.text(keyOfShot(photo));
      return el("li", { class: !text && "alone" }, text && el("img", { src: `data:image/jpeg;base64,${text}`, alt: "" }), el("span", {}, photo.bytes ? photo.name : fill(w.delivery.photo_alone, { name: photo.name })),
        el("button", { type: "button", class: "quiet", click: () => remove(photo) }, w.delivery.photo_remove, el("span", { class: "sr" }, ` ${photo.name}`)));
    }));
    const input = el("input", { id, type: "file", accept: "image/*", multiple: true, change: async () => {
      const files = [...input.files], said = [];
      input.disabled = true;
      told.textContent = w.delivery.photos_at_work;
      for (const file of files.slice(0, 40)) {
        const { photo, why } = await taken(file);
        if (why) said.push(why);
        put(one, (own) => { if (!own.photos.some((other) => other.sha256 && other.sha256 === photo.sha256) && own.photos.length < 40) own.photos.push(photo); });
      }
      input.value = "";
      input.disabled = false;
      told.textContent = said.join(" ");
      draw();
    } });
    drawShots.push(draw);
    draw();
    const most = { n: shots.most, mb: Math.floor(shots.together / 1024 / 1024) };
    return [el("label", { for: id, class: "label" }, w.delivery.photos), input, told, list, el("p", { class: "sans soft" }, fill(w.delivery.photos_go, most))];
  };
  const ask = (section) => {
    const at = section.dataset.at, one = asks.items[at], own = answer(kept(), one);
    const all = el("button", { type: "button", class: "quiet", click: () => put(one, (own) => one.looks.forEach((of) => { own.lines[of] = own.lines[of] ?? "approved"; })) }, w.delivery.all_approved);
    section.querySelector("[data-all]")?.replaceChildren(all);
    for (const look of section.querySelectorAll("[data-look]")) {
      const of = look.dataset.look;
      look.replaceChildren(choice(fill(w.delivery.how_came, { what: names[of] }), `came-${at}-${of}`, CAME.map((came) => [came, w.delivery.came[came]]), { "data-of": of }, (came) => put(one, (own) => { own.lines[of] = came; })),
        el("div", { "data-words": of, hidden: true }, ...written(fill(w.delivery.what_came_of, { what: names[of] }), `words-${at}-${of}`, own.words[of] ?? "", (text) => put(one, (own) => { own.words[of] = text; }))));
    }
    section.querySelector("[data-fate]").replaceChildren(choice(w.delivery.fate, `kept-${at}`, Object.entries(KEPT_AS).map(([value, key]) => [value, w.delivery.kept[key]]), { "data-kept": at }, (value) => put(one, (own) => { own.kept = value; })));
    section.querySelector("[data-more]").replaceChildren(...written(w.delivery.remark, `note-${at}`, own.note, (text) => put(one, (own) => { own.note = text; })), ...photos(one, `photos-${at}`));
  };
  const line = (spot, key, id) => {
    const input = el("input", { id, class: "line", autocomplete: key === "by" ? "name" : "off", maxlength: 200, input: () => { change((all) => { all[key] = input.value; }); tell(true); } });
    input.value = kept()[key];
    spot.replaceChildren(el("label", { for: id }, spot.textContent), input);
  };
  scripted();
  place.querySelectorAll("[data-at]").forEach(ask);
  place.querySelectorAll("[data-by]").forEach((spot) => line(spot, "by", "delivery-by"));
  place.querySelectorAll("[data-note]").forEach((spot) => line(spot, "note", "delivery-note"));
  place.querySelectorAll("[data-on]").forEach((spot) => spot.classList.add("paper"));
  place.append(el("div", { class: "form" }, verdict, heard, keeps, handing, again));
  tell(true);
  find();
  others(find);
})();
