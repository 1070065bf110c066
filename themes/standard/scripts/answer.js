// What one approver answers: who it is, what was decided of which mark, and the response that was signed.
const Answer = (() => {
  const { data, read, write, whole, now } = Paper;
  const asked = data("asked");
  if (!asked) return null;
  const WHO = `bookmatch ${asked.book} who`;
  const place = (who, issue = asked.issue) => `bookmatch ${asked.book} ${issue} ${who}`;
  const keyPlace = (who) => `bookmatch ${asked.book} key ${who}`;
  /** A little less than a response may be, in bytes: its code is to come. */
  const LARGEST = 256 * 1024 - 100;
  const name = (item) => `${item.room}/${item.item}`;
  const known = (who) => asked.approvers.find((one) => one.id === who);
  let link = null;
  /** Takes a private link in and out of the address bar; a key never goes anywhere else. */
  const takeLink = () => {
    const given = new URLSearchParams(location.hash.slice(1));
    if (!given.has("key")) return false;
    const [who, key] = [given.get("for"), Seal.key(given.get("key"))];
    link = known(who) && key ? "taken" : "unknown";
    if (link === "taken") {
      be(who);
      write(keyPlace(who), Seal.hex(key));
      // Signed before the link came, by whoever held the device: it is read and signed anew, never sealed unseen.
      if (read(place(who))?.response) change((kept) => { if (!kept.response?.mac) delete kept.response; });
    }
    history.replaceState(null, "", location.pathname + location.search);
    return true;
  };
  const who = () => known(read(WHO)) ?? (asked.approvers.length === 1 ? asked.approvers[0] : null);
  // A device that two share keeps one key: that of the link opened last. It serves the name that it was made for,
  // and goes when another name is chosen.
  const keyed = () => asked.approvers.filter((one) => read(keyPlace(one.id)));
  const key = () => { const [one, more] = keyed(); return one && !more && one.id === who()?.id ? read(keyPlace(one.id)) : null; };
  const be = (id) => { keyed().forEach((one) => write(keyPlace(one.id), null)); write(WHO, id); };
  /** What was decided, without what can no longer hold: of another mark, or of what is not asked. */
  const state = () => {
    const is = who();
    const kept = { items: {}, dropped: {}, handed: [], ...((is && (read(place(is.id)) ?? earlier(is.id))) || {}) };
    for (const item of asked.items) {
      const said = kept.items[name(item)];
      if (said && (said.mark !== item.mark || !item.askable)) {
        delete kept.items[name(item)];
        kept.dropped[name(item)] = said.mark;
        delete kept.response;
      }
    }
    return kept;
  };
  /** Decisions of an earlier issue that were never handed over: they hold as far as their marks do. */
  const earlier = (id) => {
    for (let issue = asked.issue - 1; issue > 0; issue--) {
      const kept = read(place(id, issue));
      if (kept) return kept.handed?.length ? null : { items: kept.items, dropped: kept.dropped };
    }
    return null;
  };
  /** Changes what is kept, from what is kept now: another tab may have written meanwhile. */
  const change = (what) => {
    const is = who(), kept = state();
    if (!is) return false;
    what(kept);
    return write(place(is.id), kept);
  };
  const decide = (item, said) => change((kept) => {
    if (kept.response) kept.changed = now();
    delete kept.response;
    delete kept.dropped[name(item)];
    if (!said.decision && !said.option && !said.note) delete kept.items[name(item)];
    else kept.items[name(item)] = { ...said, note: whole(said.note ?? "").slice(0, 4000), mark: item.mark, at: now() };
  });
  const agrees = (said) => said.decision === "approved" || said.decision === "approved as noted";
  /** What a decision still lacks: `option`, `note`; null when it is whole; `decision` when there is none. */
  const lacks = (item, said) => {
    if (!said?.decision) return "decision";
    if (agrees(said) && item.options.length > 1 && !said.option) return "option";
    return said.decision === "approved as noted" && !said.note.trim() ? "note" : null;
  };
  const decided = (kept) => asked.items.filter((item) => item.askable && !lacks(item, kept.items[name(item)]));
  /** What is on record of the one who decides, where nothing newer was decided here. */
  const recorded = (item, kept) => !kept.items[name(item)] && item.decided.find((one) => one.who === who()?.id && one.state === "holds");
  const line = (item, said) => ({
    room: item.room, item: item.item, mark: item.mark, decision: said.decision,
    option: agrees(said) && item.options.length > 1 ? said.option : undefined, note: said.note.trim() || undefined,
  });
  const statement = () => Paper.fill(Paper.w.signs.statement, { n: asked.issue });
  const sign = (typed, drawing) => change((kept) => {
    const response = {
      format: "bookmatch response 1", book: asked.book, issue: asked.issue, who: who().id, nonce: Seal.nonce(), made: now(),
      device: Paper.turn(asked.book, Seal.nonce), ledger: asked.ledger ?? undefined,
      items: decided(kept).map((item) => line(item, kept.items[name(item)])),
      signed: { name: whole(typed.trim()), statement: statement(), drawing },
    };
    if (Seal.utf8(Seal.canonical(response)).length > LARGEST) return;
    kept.response = sealed(response);
    delete kept.changed;
  });
  const sealed = (response) => (key() ? Seal.sealed(response, Seal.unhex(key())) : response);
  return { asked, name, who, key, be, takeLink, link: () => link, state, change, decide, agrees, lacks, decided, recorded, statement, sign };
})();
