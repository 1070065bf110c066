// Reads a tape as people write it, in whole nanometres, by the same rules as the program; and prints it as sheets do.
const Tape = (() => {
  const INCH = 25400000n, FOOT = 12n * INCH, MM = 1000000n, LONGEST = 10n ** 12n, DIGITS = 15;
  const UNITS = new Map(Object.entries({ '"': INCH, in: INCH, inch: INCH, inches: INCH, "'": FOOT, ft: FOOT, foot: FOOT, feet: FOOT,
    mm: MM, millimetre: MM, millimetres: MM, millimeter: MM, millimeters: MM, m: 1000n * MM, metre: 1000n * MM, metres: 1000n * MM, meter: 1000n * MM, meters: 1000n * MM,
    cm: 10n * MM, centimetre: 10n * MM, centimetres: 10n * MM, centimeter: 10n * MM, centimeters: 10n * MM }));
  const VULGAR = { "¼": [1, 4], "½": [1, 2], "¾": [3, 4], "⅐": [1, 7], "⅑": [1, 9], "⅒": [1, 10], "⅓": [1, 3], "⅔": [2, 3], "⅕": [1, 5], "⅖": [2, 5],
    "⅗": [3, 5], "⅘": [4, 5], "⅙": [1, 6], "⅚": [5, 6], "⅛": [1, 8], "⅜": [3, 8], "⅝": [5, 8], "⅞": [7, 8], "↉": [0, 3] };
  class NoLength extends Error {}
  const no = () => { throw new NoLength(); };
  class Cursor {
    constructor(text, mark) { this.rest = text.trim(); this.mark = mark; }
    take(pattern) {
      const found = this.rest.match(pattern)?.[0] ?? "";
      this.rest = this.rest.slice(found.length);
      return found;
    }
    vulgar() {
      const letter = this.take(/^[¼½¾⅐-⅞↉]/);
      return letter ? (VULGAR[letter] ?? no()).map(BigInt) : null;
    }
    number() {
      const alone = this.vulgar();
      if (alone) return alone;
      if (!/^[.,]*\d/.test(this.rest)) return null;
      const written = this.figure();
      if (this.take(/^[/⁄∕]/)) return this.below(written);
      const number = decimal(written);
      if (written.includes(".")) return number;
      const part = this.part();
      if (!part) return number;
      if (part[0] >= part[1]) no();
      return [number[0] * part[1] + part[0], part[1]];
    }
    /** Digits with a point, or with the comma that the page's language writes in its place. */
    figure() {
      const written = this.take(/^[\d.,]+/);
      if (this.mark !== ",") return written.includes(",") ? no() : written;
      // Where a comma marks decimals, a point before three digits may mark thousands.
      if (/^\d{1,3}\.\d{3}$/.test(written) || /,.*[.,]/.test(written) || /\..*,/.test(written)) no();
      return written.replace(",", ".");
    }
    part() {
      const before = this.rest, parted = this.take(/^\s+/) || this.take(/^[-‐‑]/), alone = this.vulgar();
      if (alone) return alone;
      const above = this.take(/^\d+/);
      if (parted && above && this.take(/^[/⁄∕]/)) return this.below(above);
      this.rest = before;
      return null;
    }
    below(above) {
      const under = this.take(/^[\d.,]+/);
      if (!/^\d+$/.test(above) || !/^\d+$/.test(under)) no();
      const [over] = decimal(above), [size] = decimal(under);
      return size ? [over, size] : no();
    }
    /** The size of the unit that stands here; null when none does. */
    unit() {
      this.take(/^\s+/);
      if (this.take(/^["″”“]/) || this.take(/^['′’‘]{2}/)) return INCH;
      if (this.take(/^['′’‘]/)) return FOOT;
      const letters = this.take(/^\p{Alphabetic}+/u);
      if (!letters) return null;
      const word = letters + this.take(/^[\d²]*/);
      this.take(/^\./);
      return UNITS.get(word.toLowerCase()) ?? no();
    }
  }
  const decimal = (written) => {
    const [whole, part, more] = written.split(".");
    if (more !== undefined || part === "" || whole.length > DIGITS || part?.length > DIGITS) no();
    if (part === undefined) return [BigInt(whole), 1n];
    return [BigInt(whole + part), 10n ** BigInt(part.length)];
  };
  const scaled = ([over, under], size) => {
    const product = over * size;
    return product / under > LONGEST || product % under ? no() : product / under;
  };
  const lowest = ([over, under]) => (over % under ? under : 1n);
  const length = (cursor, bare) => {
    const number = cursor.number() ?? no(), unit = cursor.unit() ?? (cursor.rest ? no() : bare ?? no()), first = scaled(number, unit);
    if (!cursor.rest) return first;
    cursor.take(/^\s+/);
    cursor.take(/^[-‐‑–]/);
    cursor.take(/^\s+/);
    const inches = scaled(cursor.number() ?? no(), cursor.unit() === INCH && unit === FOOT ? INCH : no());
    if (cursor.rest || lowest(number) !== 1n || inches >= FOOT || first + inches > LONGEST) no();
    return first + inches;
  };
  /** Nanometres; null when it is no length. `bare` is what a number without a unit counts in: `in`, `mm`, or nothing; `mark` stands before decimals. */
  const read = (text, bare, mark = ".") => {
    const cursor = new Cursor(text, mark), minus = cursor.take(/^[-−]/);
    try {
      const nanometres = length(cursor, bare && UNITS.get(bare));
      return minus ? -nanometres : nanometres;
    } catch (error) {
      if (error instanceof NoLength) return null;
      throw error;
    }
  };
  const toEven = (value, step) => {
    const down = value / step, twice = (value % step) * 2n;
    return down + (twice > step || (twice === step && down % 2n) ? 1n : 0n);
  };
  const size = (value) => (value < 0n ? -value : value);
  /** In inches to a sixteenth, or to a thirty-second where that is exact: `30 1/8"`, `≈ 23 5/8"`. */
  const imperial = (nanometres) => {
    const all = size(nanometres), parts = (all * 16n) % INCH && !((all * 32n) % INCH) ? 32n : 16n, rounded = toEven(all * parts, INCH);
    let [over, under] = [rounded % parts, parts];
    while (over && over % 2n === 0n) [over, under] = [over / 2n, under / 2n];
    const whole = rounded / parts || !over ? `${rounded / parts}` : "", sign = nanometres < 0n && rounded ? "−" : "";
    return `${rounded * INCH === all * parts ? "" : "≈ "}${sign}${whole}${over ? `${whole && " "}${over}/${under}` : ""}"`;
  };
  /** In millimetres: in tenths where it was written so or is less than 50, else in whole ones: `765 mm`. */
  const metric = (nanometres, mark = ".") => {
    const all = size(nanometres), tenth = MM / 10n, written = all % tenth === 0n && (all * 64n) % INCH;
    const step = written || all < 50n * MM ? 1n : 10n, tenths = toEven(all, step * tenth) * step;
    return `${tenths || !all ? "" : "≈ "}${nanometres < 0n && tenths ? "−" : ""}${tenths / 10n}${tenths % 10n ? `${mark}${tenths % 10n}` : ""} mm`;
  };
  return { read, imperial, metric };
})();
