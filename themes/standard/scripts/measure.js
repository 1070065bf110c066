// Sets readings of a tape against what an opening must be: the review's own reckoning, in whole nanometres.
const Measure = (() => {
  const SIZES = ["width", "height", "depth"], HEIGHTS = ["floor", "middle", "top"];
  const big = (text) => (text == null ? null : BigInt(text));
  const least = (all) => all.reduce((one, other) => (other < one ? other : one));
  const most = (all) => all.reduce((one, other) => (other > one ? other : one));
  const of = (lines, what) => Object.entries(lines).filter(([line]) => line.split(" ")[0] === what).map(([, length]) => length);
  /** Distances from the plumb line, at each height where both sides were read. */
  const plumb = (lines) => HEIGHTS.map((at) => [lines[`plumb-left ${at}`], lines[`plumb-right ${at}`]]).filter(([left, right]) => left != null && right != null);
  const isHalf = (lines) => HEIGHTS.some((at) => (lines[`plumb-left ${at}`] == null) !== (lines[`plumb-right ${at}`] == null));

  const size = (ask, lines, from) => {
    const what = ask.at ? `${ask.what} ${ask.at}` : ask.what, tape = ask.at ? [lines[what]].filter((length) => length != null) : of(lines, what), pairs = what === "width" ? plumb(lines) : [];
    const between = pairs.length ? [least(pairs.map(([, right]) => right)) - most(pairs.map(([left]) => left))] : [];
    const all = [...tape, ...between];
    if (!all.length) return null;
    const to_come = (ask.less ?? []).filter((one) => (one.of === "floor" ? from.floor !== "finished-floor" : from.walls === "studs"));
    const read = least(all), less = to_come.reduce((sum, one) => sum + BigInt(one.length), 0n), above = big(ask.above);
    const capped = (length) => (above != null && above < length ? above : length);
    const governs = capped(read - less), largest = capped(most([...all, ...pairs.map(([left, right]) => right - left)]) - less);
    const told = { what, read, governs, less: to_come, plumb: between.includes(read) && !tape.includes(read), above: governs !== read - less };
    const [wanted, to, body, play] = [ask.least, ask.most, ask.body, ask.play].map(big);
    if (ask.on_floor && from.floor_unknown && from.floor !== "finished-floor") return { ...told, verdict: "unsure", why: "floor" };
    if (ask.unsure && !(ask.unsure === "studs" && from.walls !== "studs")) return { ...told, verdict: "unsure", why: ask.unsure };
    if (wanted == null && to == null) return { ...told, verdict: SIZES.includes(what) ? "unasked" : "noted" };
    if (wanted != null && governs < wanted) return { ...told, verdict: "small", by: wanted - governs };
    if (to != null && largest > to) return { ...told, verdict: "large", governs: largest, by: largest - to };
    const left = body == null ? null : governs - body;
    if (what === "width" && left != null && play != null && left < play) return { ...told, verdict: "tight", by: left, wants: play };
    // Where the sheet wants more air at one side than at the other, what is left beside the thing differs by that.
    const off = big(ask.off), beside = what === "width" && left != null ? left : null;
    const sides = beside != null && off != null ? [(beside + off) / 2n, beside - (beside + off) / 2n] : null;
    return { ...told, verdict: "fits", by: wanted == null ? null : governs - wanted, each: beside != null && !sides ? beside / 2n : null, ...(sides ? { sides } : {}) };
  };
  const spread = (all) => most(all) - least(all);
  const square = (asks, lines) => {
    const both = of(lines, "diagonal"), pairs = plumb(lines), within = big(asks.square);
    const told = (out, plumb) => ({ what: "square", verdict: out > within ? "skew" : "square", by: out, wants: within, plumb });
    const diagonals = both.length === 2 ? told(spread(both), false) : null;
    const sides = pairs.length ? told(most([0, 1].map((side) => spread(pairs.map((pair) => pair[side])))), true) : null;
    return sides?.verdict === "skew" && diagonals?.verdict !== "skew" ? sides : diagonals ?? sides;
  };
  /** What is found of each size, of the square and of what else was read; `lines` holds lengths by line: `width floor`; `held` the faces that were read from, where they are not the book's. */
  const judge = (asks, lines, held) => {
    const from = { ...asks.from, ...held }, more = asks.asks.filter(({ what }) => !SIZES.includes(what));
    const sizes = SIZES.map((what) => size({ what, ...asks.asks.find((ask) => ask.what === what) }, lines, from));
    return [...sizes, square(asks, lines), ...more.map((ask) => size(ask, lines, from))].filter(Boolean);
  };
  return { judge, isHalf };
})();
