// Somebody's device: its own storage, and an ear for all that its pages complain of.
import { readFileSync } from "node:fs";
import path from "node:path";
import { must, same } from "./acts.mjs";
import { pagesIn, urlOf } from "./folder.mjs";
import { WIDTHS } from "./launch.mjs";

/** A device whose pages may ask one address and nothing else. */
export async function device(browser, size, address) {
  const context = await browser.newContext({ viewport: size, reducedMotion: "reduce", acceptDownloads: true });
  const one = { context, faults: [], page: null };
  /** One more page, beside the one that is at work. */
  one.another = async (url) => {
    const page = await context.newPage();
    hear(page, one.faults, (asked) => asked.startsWith(`${address}/`) || asked.startsWith("file:"));
    if (url) await page.goto(url);
    return page;
  };
  one.open = async (url) => { one.page = await one.another(url); };
  await one.open();
  return one;
}

/** Hears errors, warnings, dialogs, and requests to where none should go. */
function hear(page, faults, may) {
  page.on("console", (message) => { if (["error", "warning"].includes(message.type())) faults.push(message.text()); });
  page.on("pageerror", (error) => faults.push(String(error)));
  page.on("dialog", (dialog) => { faults.push(`a dialog: ${dialog.message()}`); dialog.dismiss(); });
  page.on("request", (request) => {
    const url = request.url();
    if (!/^(data|blob|about):/.test(url) && !may(url)) faults.push(`asks for ${url}`);
  });
}

/** What somebody wrote stands as words, and does nothing, on every published page of client and office that shows it. */
export async function isInert(browser, site, words) {
  const context = await browser.newContext({ viewport: WIDTHS[2], offline: true, reducedMotion: "reduce" });
  const page = await context.newPage(), faults = [];
  hear(page, faults, (url) => url.startsWith(urlOf(path.resolve(site), "")));
  const shown = [];
  for (const name of pagesIn(site).filter((name) => readFileSync(path.join(site, name), "utf8").includes("onerror"))) {
    await page.goto(urlOf(path.resolve(site), name), { waitUntil: "load" });
    must((await page.locator('img[src="x"], img[onerror]').count()) === 0, `${name} made an element of a note`);
    if ((await page.locator("main").innerText()).includes(words)) shown.push(name.split("/")[0]);
    same(faults, [], `a note on ${name}`);
  }
  for (const part of ["client", "office"]) must(shown.includes(part), `no page for the ${part} shows the note`);
  await context.close();
}
