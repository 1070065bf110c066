// Money in whole minor units, and what choices come to.
const Sums = (() => {
  const asked = Answer.asked;
  const unit = 10n ** BigInt(asked.decimals);
  /** `3180.00` in minor units; null where there is no price. */
  const read = (plain) => (plain == null ? null : BigInt(plain.replace(".", "")));
  const money = (minor) => {
    const size = minor < 0n ? -minor : minor, part = (size % unit).toString().padStart(asked.decimals, "0");
    const { decimal, thousands, amount } = Paper.w.figures;
    const grouped = (size / unit).toString().replace(/\B(?=(\d{3})+$)/g, thousands);
    const told = Paper.fill(amount, { sign: asked.sign, amount: `${grouped}${asked.decimals ? decimal + part : ""}` });
    return `${minor < 0n ? "−" : ""}${told.trimEnd()}`;
  };
  const price = (item, id) => read((item.options.find((option) => option.id === id) ?? (item.options.length === 1 ? item.options[0] : null))?.price);
  /** What items may still add, at the least and at the most; nothing while none of them has a price. */
  const nothing = () => ({ count: 0, least: 0n, most: 0n, priced: false });
  const add = (open, item) => {
    const prices = item.options.map((option) => read(option.price)).filter((one) => one != null);
    open.count++;
    if (!prices.length) return;
    open.priced = true;
    open.least += prices.reduce((one, other) => (other < one ? other : one));
    open.most += prices.reduce((one, other) => (other > one ? other : one));
  };
  /** What is agreed to, how much of it has no price, what is still open, and each allowance with these choices in place of the book's. */
  const of = (kept) => {
    const sums = { agreed: 0n, unpriced: 0, open: nothing(), allowances: asked.allowances.map((one) => ({ ...one, allowed: read(one.allowed), drawn: read(one.settled) ?? 0n, open: nothing() })) };
    for (const item of Answer.decided(kept)) {
      const said = kept.items[Answer.name(item)], agrees = Answer.agrees(said);
      const mine = agrees ? price(item, said.option ?? item.chosen) : 0n;
      if (mine == null) sums.unpriced++;
      else sums.agreed += mine;
      const draws = sums.allowances.find((one) => one.name === item.allowance);
      const before = item.chosen ? price(item, item.chosen) ?? 0n : 0n;
      if (draws) draws.drawn += (mine ?? 0n) - before;
    }
    // Open is what neither the book nor these decisions have chosen.
    const chosen = (item, said) => (said && Answer.agrees(said) ? said.option ?? item.chosen ?? (item.options.length === 1) : item.chosen);
    for (const item of asked.items) {
      const said = kept.items[Answer.name(item)];
      if (chosen(item, said && !Answer.lacks(item, said) ? said : null)) continue;
      add(sums.open, item);
      const draws = sums.allowances.find((one) => one.name === item.allowance);
      if (draws) add(draws.open, item);
    }
    return sums;
  };
  return { read, money, of };
})();
