// node tape.mjs SCRIPTS TABLE: reads each notation of the table in the browser, which the program reads as well.
import { readFile } from "node:fs/promises";
import path from "node:path";
import { same } from "./acts.mjs";
import { launch, newPage } from "./launch.mjs";

const [scripts, table] = process.argv.slice(2);
const rows = JSON.parse(await readFile(table, "utf8"));
const browser = await launch();
try {
  const page = await newPage(browser);
  await page.addScriptTag({ content: (await readFile(path.join(scripts, "tape.js"), "utf8")) + "\nwindow.Tape = Tape;" });
  for (const row of rows) {
    const found = await page.evaluate(({ written, bare, mark }) => {
      const length = Tape.read(written, bare, mark);
      return length === null ? [null] : [String(length), Tape.imperial(length), Tape.metric(length, mark)];
    }, row);
    const expected = row.nanometres === null ? [null] : [row.nanometres, row.imperial, row.metric];
    same(found, expected, `“${row.written}” counted in ${row.bare}`);
  }
  console.log(`${rows.length} notations`);
} finally {
  await browser.close();
}
