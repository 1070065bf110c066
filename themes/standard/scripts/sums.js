// Money in whole minor units, and what choices come to.
const Sums = (() => {
  const asked = Answer.asked;
  const unit = 10n ** BigInt(asked.decimals);
  /** `3180.00` in minor units; null where there is no price. */
  const read = (plain) => (plain == null ? null : BigInt(plain.replace(".", "")));
  const money = (minor) => {
    const size = minor < 0n ? -minor : minor, part = (size % unit).toString().padStart(asked.decimals, "0");
    const grouped = (size / unit).toString().replace(/\B(?=(\d{3})+$)/g, ",");
    return `${minor < 0n ? "−" : ""}${asked.sign}${grouped}${asked.decimals ? "." + part : ""}`;
  };
  const price = (item, id) => read((item.options.find((option) => option.id === id) ?? (item.options.length === 1 ? item.options[0] : null))?.price);
  /** What is agreed to, how much of it has no price, and each allowance with these choices in place of the book's. */
  const of = (kept) => {
    const sums = { agreed: 0n, unpriced: 0, allowances: asked.allowances.map((one) => ({ ...one, allowed: read(one.allowed), drawn: read(one.settled) ?? 0n })) };
    for (const item of Answer.decided(kept)) {
      const said = kept.items[Answer.name(item)], agrees = Answer.agrees(said);
      const mine = agrees ? price(item, said.option ?? item.chosen) : 0n;
      if (mine == null) sums.unpriced++;
      else sums.agreed += mine;
      const draws = sums.allowances.find((one) => one.name === item.allowance);
      const before = item.chosen ? price(item, item.chosen) ?? 0n : 0n;
      if (draws) draws.drawn += (mine ?? 0n) - before;
    }
    return sums;
  };
  return { read, money, of };
})();
