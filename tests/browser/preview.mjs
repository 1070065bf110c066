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
const original = readFileSync(file, "utf8");
const taken = [];
for (let save = 0; save < Number(saves); save++) {
  const fresh = `${words}, look ${save}`;
  const shown = tab.waitForFunction(
    (fresh) => document.readyState === "complete" && document.body.textContent.includes(fresh) && Date.now(),
    fresh,
    { polling: "raf" },
  );
  await new Promise((rest) => setTimeout(rest, 400));
  const saved = Date.now();
  writeFileSync(file, original.replace(words, fresh));
  taken.push(await (await shown).jsonValue() - saved);
}
await browser.close();
console.log(taken.join(" "));
