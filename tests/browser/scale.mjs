// node scale.mjs SITE PAGE…: prints pages and measures each drawing's bar in the PDF, by another program than the one
// that made it (pdftotext, of Poppler), against the scale that is printed beside it.
import { execFile } from "node:child_process";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import os from "node:os";
import path from "node:path";
import { promisify } from "node:util";
import { must } from "./acts.mjs";
import { urlOf } from "./folder.mjs";
import { launch, newPage, WIDTHS } from "./launch.mjs";

const run = promisify(execFile);
const POINTS_PER_FOOT = 12 * 72, POINTS_PER_MM = 72 / 25.4;
/** How far a measured bar may be out: the middle of a figure is known to a third of a point. */
const LEAST_POINTS = 0.8;

const [site, ...pages] = process.argv.slice(2);
const scratch = await mkdtemp(path.join(os.tmpdir(), "scale-"));
const browser = await launch();
let bars = 0;
try {
  for (const format of ["A4", "Letter"]) {
    for (const name of pages) {
      const page = await newPage(browser, WIDTHS[2]);
      await page.goto(urlOf(path.resolve(site), name), { waitUntil: "load" });
      const shown = await page.evaluate(() => [...document.querySelectorAll("svg text")].filter((text) => /^1:\d+$/.test(text.textContent) && text.checkVisibility()).length);
      must(shown === 0, `${name}: a screen says a scale that it does not hold`);
      must(!/\b1:\d\d+\b/.test(await page.evaluate(() => document.body.innerText)), `${name}: a screen says a scale`);
      const file = path.join(scratch, "page.pdf");
      await writeFile(file, await page.pdf({ format, printBackground: true }));
      bars += await measure(file, `${name} on ${format}`);
      await page.context().close();
    }
  }
} finally {
  await browser.close();
  await rm(scratch, { recursive: true });
}
console.log(`${bars} bars`);

async function measure(file, what) {
  const { stdout } = await run("pdftotext", ["-bbox", file, "-"], { maxBuffer: 1 << 26 });
  let bars = 0;
  for (const sheet of stdout.split("<page ").slice(1)) {
    const words = [...sheet.matchAll(/<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">([^<]*)<\/word>/g)]
      .map(([, left, top, right, bottom, text]) => ({ x: (Number(left) + Number(right)) / 2, left: Number(left), y: (Number(top) + Number(bottom)) / 2, text }));
    // Lettering with a halo is set twice in one place.
    const once = (word, at, all) => all.findIndex((other) => Math.abs(other.x - word.x) + Math.abs(other.y - word.y) < 4) === at;
    for (const scale of words.filter(({ text }) => /^1:\d+$/.test(text)).filter(once)) {
      bars += 1;
      const ratio = Number(scale.text.slice(2));
      for (const [unit, each] of [["ft", POINTS_PER_FOOT], ["mm", POINTS_PER_MM]]) {
        const end = words.filter((word) => word.text === unit && Math.abs(word.y - scale.y) < 22 && word.x < scale.x).sort((one, other) => other.x - one.x)[0];
        must(end, `${what}: no bar in ${unit} beside ${scale.text}`);
        const figures = words.filter((word) => /^\d+$/.test(word.text) && Math.abs(word.y - end.y) < 1.5 && word.x < end.x && word.x > end.x - 320).sort((one, other) => one.x - other.x);
        const last = figures.at(-1), first = figures.filter((one) => one.text === "0").at(-1);
        must(first && last && last !== first, `${what}: the bar in ${unit} beside ${scale.text} has no figures`);
        const drawn = last.x - first.x, stated = (Number(last.text) * each) / ratio;
        must(Math.abs(drawn - stated) < Math.max(LEAST_POINTS, stated * 0.01), `${what}: ${last.text} ${unit} at ${scale.text} measure ${drawn.toFixed(1)} pt, not ${stated.toFixed(1)}`);
      }
    }
  }
  must(bars > 0, `${what}: no drawing says its scale`);
  return bars;
}
