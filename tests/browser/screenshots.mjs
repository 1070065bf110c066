// node screenshots.mjs FOLDER OUT PAGE…: pictures of chosen pages for a person to look at.
// Each page at every width by day, the widest by night too, and as it prints. `--first` keeps to the first screen.
import { mkdir, writeFile } from "node:fs/promises";
import path from "node:path";
import { pagesIn, urlOf } from "./folder.mjs";
import * as inPage from "./in_page.mjs";
import { launch, newPage, WIDTHS } from "./launch.mjs";
import { open } from "./visit.mjs";

const fullPage = !process.argv.includes("--first");
const [folder, out, ...chosen] = process.argv.slice(2).filter((word) => word !== "--first");
if (!out) {
  console.error("node screenshots.mjs FOLDER OUT [PAGE…] [--first]");
  process.exit(2);
}
const pages = chosen.length ? chosen : pagesIn(folder);
await mkdir(out, { recursive: true });
const browser = await launch();
const page = await newPage(browser);
for (const name of pages) {
  const file = (what) => path.join(out, `${name.replace(/\.html$/, "").replaceAll("/", "_")}-${what}`);
  await page.emulateMedia({ colorScheme: "light" });
  await open(page, urlOf(path.resolve(folder), name));
  for (const size of WIDTHS) {
    await page.setViewportSize(size);
    await page.evaluate(inPage.pictures);
    await page.evaluate(() => scrollTo(0, 0));
    await page.screenshot({ path: file(`${size.width}.png`), fullPage });
  }
  await page.emulateMedia({ colorScheme: "dark" });
  await page.screenshot({ path: file("night.png"), fullPage });
  await page.emulateMedia({ colorScheme: "light" });
  await writeFile(file("paper.pdf"), await page.pdf({ preferCSSPageSize: true, printBackground: true }));
}
await browser.close();
