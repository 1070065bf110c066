// node stands.mjs PAGE: what a page says that is opened from the code on a sheet of paper, from a disk and so without a signal.
import path from "node:path";
import { must, same } from "./acts.mjs";
import { urlOf } from "./folder.mjs";
import { launch, newPage } from "./launch.mjs";

const [file] = process.argv.slice(2);
const url = urlOf(path.dirname(file), path.basename(file));
const browser = await launch();
try {
  const page = await newPage(browser);
  const box = page.locator("#paper-stands");
  const opened = async (hash) => { await page.goto("about:blank"); await page.goto(url + hash); return box.isVisible(); };

  must(!(await opened("")), "a page that was opened from no code speaks of paper");
  const mark = await box.getAttribute("data-mark");
  must(/^[0-9a-f]{8}$/.test(mark), `the mark is ${mark}`);

  must(await opened(`#paper-${mark}-1`), "it does not say that the paper stands");
  must((await box.innerText()).includes("still stands, as far as this device knows"), await box.innerText());
  same(await box.getByRole("link").count(), 0, "links where nothing is wrong");

  must(await opened("#paper-0badc0de-1"), "it does not say that the paper is another one");
  const said = await box.innerText();
  must(said.includes("Stop: your paper has the mark 0bad c0de, of issue 1.") && !said.includes("still stands"), said);
  same(await box.getByRole("link").getAttribute("href"), "tel:+15550188", "whom it calls");

  // The device heard of a newer issue than this page is of: nothing is said to stand.
  const older = page.locator("#older"), book = await older.getAttribute("data-book");
  await page.evaluate((key) => localStorage.setItem(`bookmatch ${key} newest`, JSON.stringify({ book: key, issue: 2, on: "2027-02-01" })), book);
  must(!(await opened(`#paper-${mark}-1`)), "an old page says that its paper stands");
  must(await older.isVisible(), "a newer issue is not told");
  must((await older.getByRole("link", { name: "Stop, and call the office" }).getAttribute("href")) === "tel:+15550188", "the office can't be called");
  console.log(`${file}: three answers`);
} finally {
  await browser.close();
}
