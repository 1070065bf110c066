// Saves a file of a book that is being previewed, again and again, and tells how long a browser that
// shows one of its pages takes to show the new words: `node preview.mjs PAGE FILE WORDS SAVES`.
import { readFileSync, writeFileSync } from "node:fs";
import { chromium } from "playwright-core";

const [page, file, words, saves] = process.argv.slice(2);
const executablePath = process.env.CHROMIUM || "/usr/bin/chromium";
const args = [
  "--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking",
  "--disable-component-update", "--disable-sync", "--disable-dev-shm-usage",
  "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
];
const browser = await chromium.launch({ executablePath, args });
const tab = await browser.newPage({ viewport: { width: 1440, height: 900 } });
await tab.goto(page);
await tab.evaluate(() => (window.isTheFirst = true));
const original = readFileSync(file, "utf8");
const taken = [];
for (let save = 0; save < Number(saves); save++) {
  const fresh = `${words}, look ${save}`;
  const shown = tab.waitForFunction(
    (fresh) => document.readyState === "complete" && document.body.textContent.includes(fresh)
      && [...document.images].every((image) => image.complete || image.loading === "lazy") && Date.now(),
    fresh,
    { polling: "raf" },
  );
  await new Promise((rest) => setTimeout(rest, 400));
  const saved = Date.now();
  writeFileSync(file, original.replace(words, fresh));
  taken.push(await (await shown).jsonValue() - saved);
}
// What was put in its place comes to be what a fresh load shows: what takes long to make is shown a little later.
const said = (tab) => tab.evaluate(() =>
  document.documentElement.outerHTML.replace(/data-mark="[^"]*"/, "").replace(/\s+/g, " "));
const faults = [];
const fresh = await browser.newPage({ viewport: { width: 1440, height: 900 } });
let [followed, loaded] = ["", " "];
for (let look = 0; followed !== loaded && look < 40; look++) {
  if (look > 0) await new Promise((rest) => setTimeout(rest, 500));
  await fresh.goto(page);
  [followed, loaded] = [await said(tab), await said(fresh)];
}
if (followed !== loaded) {
  const at = [...followed].findIndex((one, place) => one !== loaded[place]);
  const there = (text) => text.slice(Math.max(0, at - 40), at + 80);
  faults.push(`the page that followed is not the page as it is loaded: ${there(followed)} / ${there(loaded)}`);
}
if (!await tab.evaluate(() => window.isTheFirst)) faults.push("the page was loaded anew though it alone changed");
await browser.close();
console.log(taken.join(" "));
for (const fault of faults) console.error(fault);
process.exitCode = faults.length ? 1 : 0;
