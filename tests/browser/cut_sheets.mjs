// node cut_sheets.mjs FOLDER SHEET PAGE…: a maker's own sheet is opened from the installer's folder alone, on a telephone
// without a signal, from each page that leads to it. SHEET is the file as the designer has it.
import { readFile } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { must, same } from "./acts.mjs";
import { device } from "./device.mjs";
import { insideFolder, isFile, urlOf } from "./folder.mjs";
import { launch, WIDTHS } from "./launch.mjs";

const [folder, sheet, ...pages] = process.argv.slice(2);
const whole = path.resolve(folder), expected = await readFile(sheet);

/** What the browser opens: shown in its own viewer, or laid down where it has none. */
async function opened(page, link) {
  const laid = page.waitForEvent("download").then(async (download) => [download.url(), await download.path()]);
  const shown = page.waitForURL(/\.pdf$/, { waitUntil: "commit" }).then(() => [page.url(), fileURLToPath(page.url())]);
  [laid, shown].forEach((one) => one.catch(() => { /* The other came. */ }));
  await link.click();
  return Promise.any([laid, shown]);
}

const browser = await launch();
try {
  const phone = await device(browser, WIDTHS[0], "none:");
  await phone.context.setOffline(true);
  for (const name of pages) {
    await phone.page.goto(urlOf(whole, name));
    const links = phone.page.locator(".cut-sheets a[type='application/pdf']");
    same(await links.count(), 1, `links to it on ${name}`);
    const target = await links.evaluate((link) => link.href), inside = insideFolder(whole, target);
    must(inside !== null && isFile(whole, inside), `${name} leads to ${target}, which is not there`);
    const box = await links.boundingBox();
    must(box.x >= 0 && box.x + box.width <= WIDTHS[0].width, `${name}: the link sticks out`);
    const [url, file] = await opened(phone.page, links);
    same(url, target, `what ${name} opens`);
    must((await readFile(file)).equals(expected), `${name} opens another file than the designer's`);
  }
  // The browser's own viewer of such files is a page of its own.
  same(phone.faults.filter((fault) => !/^asks for chrome(-extension|-untrusted)?:/.test(fault)), [], "what the pages complain of");
} finally {
  await browser.close();
}
