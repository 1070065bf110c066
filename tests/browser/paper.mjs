// Prints a page and looks at the sheets: none may be blank.
import { execFile } from "node:child_process";
import { rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { promisify } from "node:util";

const run = promisify(execFile);
const DOTS_AN_INCH = 24;
/** Dots of ink that make a sheet more than a speck. */
const LEAST_INK = 6;
/** The part of a sheet at each side that belongs to the margin, where every sheet carries its title. */
const MARGIN = 1 / 8;

export async function print(page, ear, name, scratch, fault) {
  ear.report = (check, text) => fault(name, "paper", check, text);
  const file = path.join(scratch, `${crypto.randomUUID()}.pdf`);
  await writeFile(file, await page.pdf({ preferCSSPageSize: true, printBackground: true }));
  const pictures = await run("pdftoppm", ["-gray", "-r", String(DOTS_AN_INCH), file], { encoding: "buffer", maxBuffer: 1 << 28 });
  await rm(file);
  const sheets = graymaps(pictures.stdout);
  sheets.forEach((sheet, index) => {
    if (ink(sheet) < LEAST_INK) fault(name, "paper", "paper", `sheet ${index + 1} of ${sheets.length} is blank`);
  });
}

/** Takes apart the gray pictures (binary PGM) that follow one another. */
function graymaps(bytes) {
  const found = [];
  for (let at = 0; at < bytes.length; ) {
    const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(at, at + 64).toString("latin1"));
    if (!head) throw new Error("the printed sheets could not be turned into pictures");
    const [width, height] = [Number(head[1]), Number(head[2])];
    const start = at + head[0].length;
    at = start + width * height;
    found.push({ width, height, dots: bytes.subarray(start, at) });
  }
  return found;
}

function ink({ width, height, dots }) {
  let count = 0;
  for (let y = Math.round(height * MARGIN); y < height * (1 - MARGIN); y++) {
    for (let x = Math.round(width * MARGIN); x < width * (1 - MARGIN); x++) {
      if (dots[y * width + x] < 200) count++;
    }
  }
  return count;
}
