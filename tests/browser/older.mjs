// Pages of an older issue: what they know of a newer one, from their server, from this device, or not at all.
import { cp } from "node:fs/promises";
import path from "node:path";
import { must, same } from "./acts.mjs";
import { urlOf } from "./folder.mjs";

const notice = (page) => page.locator("#older");
const reads = async (page) => (await notice(page).innerText()).replace(/\s+/g, " ");

/** Opens pages on a device before the book changes; the function that it returns is called once a newer issue is published. */
export async function opensEarly(device, address) {
  const pages = {};
  for (const [folder, page] of [["client", "client/rooms/kitchen.html"], ["installer", "installer/openings/hall/niche.html"]]) {
    pages[folder] = await device.another(`${address}/${page}`);
    must(!(await notice(pages[folder]).isVisible()), `the newest page of the ${folder} calls itself old`);
  }
  return async () => {
    for (const [folder, words] of [["client", "is recorded for what did not change"], ["installer", "Do not cut"]]) {
      const page = pages[folder];
      // As when somebody comes back to a page that stood in the background.
      await page.evaluate(() => document.dispatchEvent(new Event("visibilitychange")));
      await notice(page).waitFor();
      const said = await reads(page);
      must(said.includes("This page is of issue 1. Issue 2 stands now, 1 Feb 2027.") && said.includes(words), said);
      await page.getByRole("link", { name: "Open the newest page" }).click();
      await page.waitForLoadState();
      same(await notice(page).getAttribute("data-issue"), "2", `the page of the ${folder} that was opened anew`);
      must(!(await notice(page).isVisible()), `the newest page of the ${folder} calls itself old`);
      await page.close();
    }
  };
}

/** Keeps the client's pages as they are now, as on a stick or in an e-mail. */
export async function keep(site, kept) {
  await cp(path.join(site, "client"), kept, { recursive: true });
}

/** From a disk a page can't ask; it knows what a newer page of the same book left on the device. */
export async function fromADisk(device, kept, site) {
  const old = await device.another(urlOf(path.resolve(kept), "index.html"));
  must(!(await notice(old).isVisible()), "a page on a disk knows what it can't know");
  const newest = await device.another(urlOf(path.resolve(site), "client/index.html"));
  must(!(await notice(newest).isVisible()), "the newest page calls itself old");
  // The older one, still open, hears of it; so does any that is opened later.
  await notice(old).waitFor();
  await old.goto(urlOf(path.resolve(kept), "items/kitchen/runner.html"));
  const said = await reads(old);
  must(said.includes("This page is of issue 1. Issue 2 stands now") && said.includes("Open the newest pages that the office sent you"), said);
  for (const page of [old, newest]) await page.close();
}
