// What is handed over, in the one form in which it can be checked: canonical JSON (RFC 8785), SHA-256 (FIPS 180-4), HMAC (RFC 2104).
// Browsers keep their own digests from pages that come without TLS, as on a network at home; so they stand here.
const Seal = (() => {
  const canonical = (value) => {
    if (Array.isArray(value)) return `[${value.map(canonical).join()}]`;
    if (value && typeof value === "object") {
      // The default order is that of UTF-16 code units, as the RFC asks.
      const names = Object.keys(value).filter((name) => value[name] !== undefined).sort();
      return `{${names.map((name) => `${JSON.stringify(name)}:${canonical(value[name])}`).join()}}`;
    }
    if (typeof value === "number" && !Number.isFinite(value)) throw new RangeError("not a number of JSON");
    return JSON.stringify(value);
  };
  const primes = [];
  for (let n = 2; primes.length < 64; n++) if (primes.every((prime) => n % prime)) primes.push(n);
  const fraction = (root) => ((root % 1) * 2 ** 32) | 0;
  const ROUNDS = primes.map((prime) => fraction(Math.cbrt(prime)));
  const START = primes.slice(0, 8).map((prime) => fraction(Math.sqrt(prime)));
  const turn = (word, by) => (word >>> by) | (word << (32 - by));
  const block = (sum, words) => {
    for (let i = 16; i < 64; i++) {
      const [far, near] = [words[i - 15], words[i - 2]];
      const one = turn(far, 7) ^ turn(far, 18) ^ (far >>> 3), other = turn(near, 17) ^ turn(near, 19) ^ (near >>> 10);
      words[i] = (words[i - 16] + one + words[i - 7] + other) | 0;
    }
    let [a, b, c, d, e, f, g, h] = sum;
    for (let i = 0; i < 64; i++) {
      const one = (h + (turn(e, 6) ^ turn(e, 11) ^ turn(e, 25)) + ((e & f) ^ (~e & g)) + ROUNDS[i] + words[i]) | 0;
      const other = ((turn(a, 2) ^ turn(a, 13) ^ turn(a, 22)) + ((a & b) ^ (a & c) ^ (b & c))) | 0;
      [h, g, f, e, d, c, b, a] = [g, f, e, (d + one) | 0, c, b, a, (one + other) | 0];
    }
    return [a, b, c, d, e, f, g, h].map((word, i) => (word + sum[i]) | 0);
  };
  const sha256 = (bytes) => {
    const size = (((bytes.length + 8) >> 6) + 1) * 64;
    const padded = new Uint8Array(size), view = new DataView(padded.buffer);
    padded.set(bytes);
    padded[bytes.length] = 128;
    view.setUint32(size - 8, Math.floor(bytes.length / 2 ** 29));
    view.setUint32(size - 4, bytes.length << 3);
    let sum = START;
    for (let at = 0; at < size; at += 64) {
      sum = block(sum, Array.from({ length: 64 }, (_, i) => (i < 16 ? view.getInt32(at + i * 4) : 0)));
    }
    const out = new DataView(new ArrayBuffer(32));
    sum.forEach((word, i) => out.setInt32(i * 4, word));
    return new Uint8Array(out.buffer);
  };
  const joined = (one, other) => Uint8Array.from([...one, ...other]);
  const hmac = (key, bytes) => {
    const short = key.length > 64 ? sha256(key) : key;
    const pad = (mask) => Uint8Array.from({ length: 64 }, (_, i) => (short[i] ?? 0) ^ mask);
    return sha256(joined(pad(92), sha256(joined(pad(54), bytes))));
  };
  const utf8 = (text) => new TextEncoder().encode(text);
  const hex = (bytes) => Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
  const unhex = (text) => Uint8Array.from(text.match(/../g) ?? [], (pair) => parseInt(pair, 16));
  const nonce = () => hex(crypto.getRandomValues(new Uint8Array(16)));
  /** 32 bytes from 43 characters of base64url (RFC 4648, section 5); null if it is none. */
  const key = (text) => {
    if (!/^[\w-]{43}$/.test(text)) return null;
    return Uint8Array.from(atob(text.replace(/-/g, "+").replace(/_/g, "/")), (letter) => letter.charCodeAt(0));
  };
  /** The same with its code beside it. */
  const sealed = (value, bytes) => ({ ...value, mac: hex(hmac(bytes, utf8(canonical(value)))) });
  return { canonical, sha256, hmac, utf8, hex, unhex, nonce, key, sealed };
})();
