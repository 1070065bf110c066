// node seal.mjs SCRIPTS VECTORS: canonical JSON, SHA-256 and HMAC of the pages, in the browser, against published vectors.
import { readFile } from "node:fs/promises";
import path from "node:path";
import { must, same } from "./acts.mjs";
import { launch, newPage } from "./launch.mjs";

const [scripts, vectors] = process.argv.slice(2);
const { rfc4231, fips180, rfc8785 } = JSON.parse(await readFile(vectors, "utf8"));
const browser = await launch();
try {
  const page = await newPage(browser);
  await page.addScriptTag({ content: (await readFile(path.join(scripts, "seal.js"), "utf8")) + "\nwindow.Seal = Seal;" });
  const subtle = await page.evaluate(() => isSecureContext && !!crypto.subtle);
  must(!subtle, "the page has the browser's own digests, and proves nothing for a network at home");
  for (const { key, data, mac } of rfc4231) {
    same(await page.evaluate(([key, data]) => Seal.hex(Seal.hmac(Seal.unhex(key), Seal.unhex(data))), [key, data]), mac, `HMAC under ${key}`);
  }
  for (const { text, times, sha256 } of fips180) {
    same(await page.evaluate(([text, times]) => Seal.hex(Seal.sha256(Seal.utf8(text.repeat(times)))), [text, times]), sha256, `SHA-256 of ${text}`);
  }
  for (const { input, canonical } of rfc8785) {
    same(await page.evaluate((input) => Seal.canonical(JSON.parse(input)), input), canonical, "canonical JSON");
  }
  const key = await page.evaluate(() => [Seal.hex(Seal.key("AAECAwQFBgcICQoLDA0ODxAREhMUFRYXGBkaGxwdHh8")), Seal.key("short"), Seal.key("A".repeat(42) + "!")]);
  same(key, ["000102030405060708090a0b0c0d0e0f101112131415161718191a1b1c1d1e1f", null, null], "a key of base64url");
  console.log(`${rfc4231.length + fips180.length + rfc8785.length} vectors`);
} finally {
  await browser.close();
}
