// node opening_sheets.mjs SITE PAGE…: prints pages on A4 and Letter and says how many sheets each takes: `page A4 3`.
import { execFile } from "node:child_process";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import os from "node:os";
import path from "node:path";
import { promisify } from "node:util";
import { must } from "./acts.mjs";
import { urlOf } from "./folder.mjs";
import { launch, newPage, WIDTHS } from "./launch.mjs";

const run = promisify(execFile);
const [site, ...pages] = process.argv.slice(2);
const scratch = await mkdtemp(path.join(os.tmpdir(), "sheets-"));
const file = path.join(scratch, "page.pdf");
const browser = await launch();
try {
  for (const name of pages) {
    const page = await newPage(browser, WIDTHS[2]);
    await page.goto(urlOf(path.resolve(site), name), { waitUntil: "load" });
    const headings = await page.evaluate(() => [...document.querySelectorAll(".view h2")].map((heading) => heading.textContent.trim().toUpperCase()));
    for (const format of ["A4", "Letter"]) {
      await writeFile(file, await page.pdf({ format, printBackground: true }));
      const { stdout } = await run("pdftotext", ["-layout", file, "-"], { maxBuffer: 1 << 26 });
      const sheets = stdout.split("\f").filter((sheet) => sheet.trim());
      sheets.forEach((sheet, at) => must(!endsInHeading(sheet, headings), `${name} on ${format}: sheet ${at + 1} ends in a heading`));
      console.log(`${name} ${format} ${sheets.length}`);
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
  const title = lines.findIndex((line) => line.includes("sheet ") && / of \d+/.test(line));
  return last >= 0 && title - last < 5;
}
