// Prints a page and looks at the sheets: none may be blank, nothing may be cut off or too small to read.
import { execFile } from "node:child_process";
import { rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { promisify } from "node:util";
import * as inPage from "./in_page.mjs";
import { PAPER } from "./launch.mjs";

const run = promisify(execFile);
const DOTS_AN_INCH = 36;
/** Dots of ink that make a sheet more than a speck, and how dark a dot of ink is. */
const LEAST_INK = 8;
const DARKEST_PAPER = 235;
/** Titles in the margin stand on every sheet, blank or not, so they are left out. */
const BARE_MARGINS = `@page { ${[
  "top-left-corner", "top-left", "top-center", "top-right", "top-right-corner",
  "left-top", "left-middle", "left-bottom", "right-top", "right-middle", "right-bottom",
  "bottom-left-corner", "bottom-left", "bottom-center", "bottom-right", "bottom-right-corner",
].map((box) => `@${box} { content: none !important }`).join(" ")} }`;

export async function print(page, ear, name, scratch, fault) {
  ear.report = (check, text) => fault(name, null, check, `on paper: ${text}`);
  await page.emulateMedia({ colorScheme: "light" });
  const before = page.viewportSize();
  await page.setViewportSize(PAPER);
  await page.emulateMedia({ media: "print" });
  (await page.evaluate(inPage.onPaper)).forEach((text) => fault(name, null, "paper", text));
  await page.emulateMedia({ media: null });
  await page.setViewportSize(before);
  await page.addStyleTag({ content: BARE_MARGINS });
  const file = path.join(scratch, `${crypto.randomUUID()}.pdf`);
  await writeFile(file, await page.pdf({ preferCSSPageSize: true, printBackground: true }));
  const pictures = await run("pdftoppm", ["-gray", "-r", String(DOTS_AN_INCH), file], { encoding: "buffer", maxBuffer: 1 << 28 });
  await rm(file);
  const sheets = graymaps(pictures.stdout);
  sheets.forEach((dots, index) => {
    const ink = dots.filter((dot) => dot < DARKEST_PAPER).length;
    if (ink < LEAST_INK) fault(name, null, "paper", `sheet ${index + 1} of ${sheets.length} is blank`);
  });
}

/** Takes apart the gray pictures (binary PGM) that follow one another. */
function graymaps(bytes) {
  const found = [];
  for (let at = 0; at < bytes.length; ) {
    const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(at, at + 64).toString("latin1"));
    if (!head) throw new Error("the printed sheets could not be turned into pictures");
    const start = at + head[0].length;
    at = start + Number(head[1]) * Number(head[2]);
    found.push(bytes.subarray(start, at));
  }
  return found;
}
