// node scanned.mjs PROGRAM BOOK SITE PORT CODE FILE FROM TO: somebody scans the code on a sheet that was superseded; with a signal, without
// one after the page was seen, and without one since before. CODE is what an independent reader makes of it;
// in FILE of the book the designer writes TO instead of FROM.
import { readFile, writeFile } from "node:fs/promises";
import path from "node:path";
import { must, same } from "./acts.mjs";
import { device } from "./device.mjs";
import { launch, WIDTHS } from "./launch.mjs";
import { Program } from "./program.mjs";

const [binary, book, site, port, code, file, from, to] = process.argv.slice(2);
const program = new Program(binary, book, site, port);
const DAY = "2027-01-15";

/** Opens what a code leads to, as a telephone's camera does; what the page says of the paper, if that is to be seen. */
async function scans(phone, address) {
  await phone.page.goto("about:blank");
  await phone.page.goto(address);
  const box = phone.page.locator("#paper-stands");
  return (await box.isVisible()) ? (await box.innerText()).replace(/\s+/g, " ") : "";
}

const STANDS = "still stands, as far as this device knows";
const stop = `Stop: your paper has the mark ${code.match(/#paper-(.{4})(.{4})/).slice(1).join(" ")}, of issue 1.`;

/** While the paper stands, two who build from it have scanned it. */
async function stands(phone) {
  must((await scans(phone, code)).includes(STANDS), "the newest paper does not stand");
  await phone.page.waitForFunction(() => navigator.serviceWorker?.controller && document.readyState === "complete");
  await scans(phone, code);
}

/** The designer changes what it is built from, and publishes; the server follows. Until it does, the page may be the older one. */
async function isSuperseded(phone) {
  const written = path.join(book, file), text = await readFile(written, "utf8");
  must(text.includes(from), `“${from}” is not in ${file}`);
  await writeFile(written, text.replace(from, to));
  await program.run("issue", ["--for", "approval", ...program.on(DAY)]);
  await program.publish(DAY);
  let said = "";
  for (let tries = 0; tries < 60 && !said.includes("Stop"); tries++) {
    said = await scans(phone, code);
    if (!said.includes("Stop")) await new Promise((rest) => setTimeout(rest, 500));
  }
  must(said.includes(stop) && !said.includes(STANDS), `with a signal the page says “${said}”`);
  same(await phone.page.locator("#paper-stands").getByRole("link").getAttribute("href"), "tel:+15550188", "whom it calls");
  const mark = await phone.page.locator("#paper-stands").getAttribute("data-mark");
  must((await scans(phone, code.replace(/#paper-.*/, `#paper-${mark}-2`))).includes(STANDS), "the new paper does not stand");
  await scans(phone, code);
}

await program.host();
const browser = await launch("127.0.0.1");
try {
  const [here, away] = [await device(browser, WIDTHS[0], program.address), await device(browser, WIDTHS[0], program.address)];
  for (const phone of [here, away]) await stands(phone);
  await away.page.goto("about:blank");
  await isSuperseded(here);
  // Without a server there is no signal for whatever keeps the pages either.
  await program.stop();
  must((await scans(here, code)).includes(stop), "without a signal it forgets that the paper was superseded");
  // Nobody can tell it: it says no more than that it knows of nothing newer.
  const heard = await scans(away, code);
  must(heard.includes(STANDS), `a telephone that heard of nothing says “${heard}”`);
  for (const phone of [here, away]) same(phone.faults.filter((fault) => !/ERR_(INTERNET_DISCONNECTED|FAILED|CONNECTION_REFUSED)/.test(fault)), [], "what the page complains of");
} finally {
  await browser.close();
  await program.stop();
}
