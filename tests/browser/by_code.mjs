// node by_code.mjs CODE NAME: the page that a code on paper leads to, over TLS; NAME is found on this machine, and its
// certificate is the test's own.
import { must, same } from "./acts.mjs";
import { chromiumAt } from "./launch.mjs";

const [code, name] = process.argv.slice(2);
const browser = await chromiumAt(name);
try {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, ignoreHTTPSErrors: true });
  const page = await context.newPage(), lost = [];
  page.on("response", (answer) => { if (answer.status() >= 400) lost.push(`${answer.status()} ${answer.url()}`); });
  page.on("pageerror", (error) => lost.push(String(error)));
  await page.goto(code);
  const box = page.locator("#paper-stands");
  await box.waitFor();
  must((await box.innerText()).includes("still stands, as far as this device knows"), await box.innerText());
  await page.goto("about:blank");
  await page.goto(code.replace(/#paper-[0-9a-f]{8}/, "#paper-0badc0de"));
  must((await box.innerText()).includes("Stop: your paper has the mark 0bad c0de"), await box.innerText());
  same(lost, [], "what the page did not get");
} finally {
  await browser.close();
}
