// What tests of deciding and of readings share: a page that hears itself, axe, and a way to fail.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { urlOf } from "./folder.mjs";
import * as inPage from "./in_page.mjs";
import { launch, newPage, WIDTHS } from "./launch.mjs";
import { listen } from "./visit.mjs";

const axeSource = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

/** Fails the whole run with a sentence. */
export function must(holds, sentence) {
  if (!holds) throw new Error(sentence);
}

export function same(found, expected, what) {
  const [one, other] = [found, expected].map((value) => JSON.stringify(value));
  must(one === other, `${what}: ${one} instead of ${other}`);
}

/** Runs `steps` on a telephone and on a desk, each on a device of its own; nothing may be complained of. */
export async function onEachDevice(folder, steps) {
  const browser = await launch();
  try {
    for (const size of [WIDTHS[0], WIDTHS[2]]) {
      const page = await newPage(browser, size, { acceptDownloads: true });
      const ear = listen(page, path.resolve(folder));
      const faults = [];
      ear.report = (check, text) => faults.push(`${check}: ${text}`);
      page.on("dialog", (dialog) => { faults.push(`a dialog: ${dialog.message()}`); dialog.dismiss(); });
      await steps({ page, size, faults, go: (name) => goTo(page, folder, name) });
      same(faults, [], `at ${size.width} px`);
      await page.context().close();
    }
  } finally {
    await browser.close();
  }
}

function goTo(page, folder, name) {
  const [file, fragment] = name.split("#");
  return page.goto(urlOf(path.resolve(folder), file) + (fragment ? `#${fragment}` : ""), { waitUntil: "load" });
}

/** Looks at the page as it stands, with what scripts have put there. */
export async function isSound(page, what) {
  await page.evaluate(inPage.installNames);
  same(await page.evaluate(inPage.sideways), [], `${what}: sticks out`);
  same(await page.evaluate(inPage.smallText), [], `${what}: too small`);
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(axeSource);
  const { violations } = await page.evaluate((runOnly) => axe.run(document, { runOnly, resultTypes: ["violations"], preload: false }), RULES);
  same(violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(" ")).slice(0, 3)}`), [], `${what}: axe`);
  const small = await page.evaluate(() => [...document.querySelectorAll(".form button, .form a.btn, .boxes label, summary, input.line, textarea")]
    .filter((e) => e.checkVisibility()).map((e) => [nameOf(e), Math.round(e.getBoundingClientRect().height)]).filter(([, high]) => high < 44));
  same(small, [], `${what}: targets under 44 px`);
}

/** Goes on with the tab key until `wanted` has the focus, which must be seen. */
export async function tabTo(page, wanted, what) {
  for (let presses = 0; presses < 400; presses++) {
    await page.keyboard.press("Tab");
    if (await wanted.evaluate((element) => element === document.activeElement)) {
      const seen = await wanted.evaluate((element) => {
        const of = [element, element.closest("label")].filter(Boolean);
        return of.some((one) => getComputedStyle(one).outlineStyle !== "none" && parseFloat(getComputedStyle(one).outlineWidth) >= 2);
      });
      must(seen, `the focus on ${what} is not seen`);
      return;
    }
  }
  throw new Error(`the tab key does not reach ${what}`);
}
