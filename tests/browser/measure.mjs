// node measure.mjs SCRIPTS TABLE: judges each row's readings in the browser by what the opening's own sheet asks.
import { readFile } from "node:fs/promises";
import path from "node:path";
import { same } from "./acts.mjs";
import { launch, newPage } from "./launch.mjs";

const [scripts, table] = process.argv.slice(2);
const rows = JSON.parse(await readFile(table, "utf8"));
const browser = await launch();
try {
  const page = await newPage(browser);
  await page.addScriptTag({ content: (await readFile(path.join(scripts, "measure.js"), "utf8")) + "\nwindow.Measure = Measure;" });
  for (const { name, asks, lines, from, verdicts, governs } of rows) {
    const found = await page.evaluate(({ asks, lines, from }) => {
      const read = Object.fromEntries(Object.entries(lines).map(([line, length]) => [line, BigInt(length)]));
      return Measure.judge(asks, read, from).map((one) => [one.what, one.verdict, one.governs == null ? null : String(one.governs)]);
    }, { asks, lines, from });
    same(found.map(([what, verdict]) => `${what} ${verdict}`).sort(), Object.entries(verdicts).map((pair) => pair.join(" ")).sort(), name);
    for (const [what, length] of Object.entries(governs)) same(found.find((one) => one[0] === what)[2], length, `${name}: what governs the ${what}`);
  }
  console.log(`${rows.length} openings`);
} finally {
  await browser.close();
}
