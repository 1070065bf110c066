// node opening_sheets.mjs SITE PAGE…: prints pages on A4 and Letter, looks whether anything is cut, too small or for a
// screen alone, and says how many sheets each takes, and which headings stand on the first: `page A4 3 a | b`.
import { execFile } from "node:child_process";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import os from "node:os";
import path from "node:path";
import { promisify } from "node:util";
import { must } from "./acts.mjs";
import { urlOf } from "./folder.mjs";
import { launch, newPage, WIDTHS } from "./launch.mjs";

const run = promisify(execFile);
/** What 7 points are told as at the least. */
const LEAST_TYPE = 7 - 0.4;
const [site, ...pages] = process.argv.slice(2);
const scratch = await mkdtemp(path.join(os.tmpdir(), "sheets-"));
const file = path.join(scratch, "page.pdf");
const browser = await launch();
try {
  for (const name of pages) {
    const page = await newPage(browser, WIDTHS[2]);
    await page.goto(urlOf(path.resolve(site), name), { waitUntil: "load" });
    const onPaper = await inPrint(page);
    must(onPaper.length === 0, `${name}: on paper stands what only a screen can do: ${onPaper.join("; ")}`);
    const headings = await page.evaluate(() => [...document.querySelectorAll(".view h2")].map((heading) => heading.textContent.trim().toUpperCase()));
    // What stands under the plan, if there is one.
    const caption = await page.evaluate(() => document.querySelector(".above .cap")?.textContent.trim());
    for (const format of ["A4", "Letter"]) {
      await writeFile(file, await page.pdf({ format, printBackground: true, tagged: true }));
      const { stdout } = await run("pdftotext", ["-layout", file, "-"], { maxBuffer: 1 << 26 });
      const sheets = stdout.split("\f").filter((sheet) => sheet.trim());
      sheets.forEach((sheet, at) => must(!endsInHeading(sheet, headings), `${name} on ${format}: sheet ${at + 1} ends in a heading`));
      const cut = await cutIn(file);
      must(cut.length === 0, `${name} on ${format}: cut across sheets: ${cut.join("; ")}`);
      const least = await leastType(file);
      must(least > LEAST_TYPE, `${name} on ${format}: set at ${least.toFixed(1)} pt; 7 at least`);
      const first = sheets[0].toUpperCase();
      const stands = headings.filter((heading) => first.includes(heading));
      if (caption && first.includes(caption.toUpperCase())) stands.push("THE PLAN");
      console.log(`${name} ${format} ${sheets.length} ${stands.join(" | ")}`);
    }
    await page.context().close();
  }
} finally {
  await browser.close();
  await rm(scratch, { recursive: true });
}

/** Whether nothing but the line below a heading, and the title block, follows the last heading of a sheet. */
function endsInHeading(sheet, headings) {
  const lines = sheet.split("\n").map((line) => line.trim()).filter(Boolean);
  const last = lines.findLastIndex((line) => headings.some((heading) => line.includes(heading)));
  const title = lines.findIndex((line) => /\b(sheet|lámina) \d+ (of|de) \d+/i.test(line));
  return last >= 0 && title - last < 5;
}

/** What is seen on paper and can only be used on a screen: buttons, menus, and words that ask for a finger. */
async function inPrint(page) {
  await page.emulateMedia({ media: "print" });
  const found = await page.evaluate(() => {
    const shown = (element) => element.checkVisibility({ visibilityProperty: true }) && element.getBoundingClientRect().height > 1;
    const controls = [...document.querySelectorAll("button, .btn, select, summary, nav, input:not(.line, [type=checkbox], [type=radio])")];
    const words = /\b(tap (here|to|on|it)|click|scroll|swipe|toque (aquí|en)|pulse|deslice)\b/i.exec(document.body.innerText);
    return [...controls.filter(shown).map((one) => one.outerHTML.slice(0, 80)), ...(words ? [words[0]] : [])];
  });
  await page.emulateMedia({ media: null });
  return found;
}

/** Rows, pictures, paragraphs and headings that begin on one sheet and end on another, by the file's structure tree. */
async function cutIn(file) {
  const { stdout } = await run("qpdf", ["--json=2", "--json-key=qpdf", file], { maxBuffer: 1 << 28 });
  const objects = JSON.parse(stdout).qpdf[1];
  const of = (reference) => (typeof reference === "string" && reference.endsWith(" R") ? objects[`obj:${reference}`]?.value : reference);
  const WHOLE = new Set(["/TR", "/Figure", "/P", "/LI", "/H1", "/H2", "/H3", "/TH", "/TD"]);
  const found = [];
  /** The sheets that an element's content stands on. */
  const sheets = (element, page) => {
    const on = element["/Pg"] ?? page, all = new Set();
    for (const kid of [of(element["/K"])].flat().map(of)) {
      if (typeof kid === "number") all.add(on);
      else if (kid?.["/Type"] === "/MCR") all.add(kid["/Pg"] ?? on);
      else if (kid && kid["/Type"] !== "/OBJR") sheets(kid, on).forEach((one) => all.add(one));
    }
    if (WHOLE.has(element["/S"]) && all.size > 1) found.push(element["/S"].slice(1));
    return all;
  };
  const root = Object.values(objects).find((object) => object.value?.["/Type"] === "/StructTreeRoot");
  must(root, "the file has no structure tree");
  sheets(root.value, null);
  return found;
}

/** The smallest type, in points: by Poppler, which enlarges three times at most and cuts off what is no whole number. */
async function leastType(file) {
  const { stdout } = await run("pdftohtml", ["-xml", "-i", "-stdout", "-zoom", "3", file], { maxBuffer: 1 << 26 });
  return Math.min(...[...stdout.matchAll(/<fontspec [^>]*size="(\d+)"/g)].map(([, size]) => Number(size) / 3));
}
