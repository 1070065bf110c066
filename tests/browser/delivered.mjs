// node delivered.mjs PROGRAM BOOK SITE PORT YARD: what came is looked at and photographed in a yard without a signal, on a
// telephone that opened the page where it had one; it is handed over at the gate, and the office confirms it.
import { readFileSync } from "node:fs";
import path from "node:path";
import { must, same } from "./acts.mjs";
import { device } from "./device.mjs";
import { urlOf } from "./folder.mjs";
import { launch, WIDTHS } from "./launch.mjs";
import { isPlain } from "./photographs.mjs";
import { Program } from "./program.mjs";

const [binary, book, site, port, yard] = process.argv.slice(2);
const program = new Program(binary, book, site, port);
const SHEET = `${program.address}/installer/deliveries/from-ardwin.html`;
const received = () => program.facts().filter(({ is }) => is === "received");
const section = (page, name) => page.locator("section.came", { has: page.getByRole("heading", { name }) });

async function says(page, words) {
  await page.waitForFunction((wanted) => document.querySelector("#delivery > .form").innerText.replace(/\s+/g, " ").includes(wanted), words);
}

/** In the morning, at the office: the page is opened, and kept. */
async function opensInTheMorning(phone) {
  await phone.page.goto(SHEET);
  await phone.page.waitForFunction(() => navigator.serviceWorker?.controller && document.readyState === "complete");
  await phone.page.goto(SHEET);
}

/** In the yard: the pulls are as approved, the rug is grey, and is taken all the same. */
async function looksAtWhatCame(phone) {
  // Without a server there is no signal for what keeps the page either.
  await program.stop();
  await phone.context.setOffline(true);
  await phone.page.reload();
  await section(phone.page, "Pulls").getByRole("button", { name: "All of it came as approved" }).click();
  const rug = section(phone.page, "Rug");
  await rug.getByRole("group", { name: "Finish: it came" }).getByLabel("Different", { exact: true }).check();
  await rug.getByRole("button", { name: "All of it came as approved" }).click();
  await rug.getByLabel("Finish: what came instead, or what is damaged").fill("grey");
  await rug.getByLabel("Taken all the same").check();
  await rug.getByLabel("Photographs", { exact: true }).setInputFiles([yard]);
  await rug.locator(".shots img").waitFor();
  await phone.page.getByLabel("Received by").fill("Noor Tembley");
  await phone.page.getByLabel("Number of the delivery note").fill("4711");
  await says(phone.page, "2 items of this delivery, received by Noor Tembley, are ready to be handed over. 1 photograph goes with it.");
  await phone.page.getByRole("button", { name: "Send to the office" }).click();
  await says(phone.page, "It did not get there. Nothing is lost.");
  same(received(), [], "what is on record while the telephone has no signal");
}

/** The telephone is put away and taken out again, still in the yard. */
async function opensAgain(phone) {
  await phone.page.close();
  await phone.open(SHEET);
  await says(phone.page, "K-01 Rug: Different");
  await says(phone.page, "1 photograph goes with it.");
  const shown = await section(phone.page, "Rug").locator(".shots img").evaluate((image) => image.decode().then(() => image.naturalHeight));
  same(shown, 1600, "the height of the photograph that the telephone kept");
}

async function handsOverAtTheGate(phone) {
  await program.host();
  await phone.context.setOffline(false);
  for (const told of ["recorded", "already recorded"]) {
    await phone.page.getByRole("button", { name: "Send to the office" }).click();
    await says(phone.page, `It has arrived at the office: ${told}`);
  }
  const [fact, ...more] = received();
  same([more.length, fact.by, fact.delivery, fact.device.turn > 0], [0, "Noor Tembley", { from: "Ardwin", note: "4711" }, true], "what is on record");
  const [photo] = fact.items.find(({ item }) => item === "rug").photos;
  const kept = readFileSync(path.join(book, "record/photographs", `${photo.sha256}.jpg`));
  same([photo.name, kept.length, ...isPlain(kept, photo.sha256, "on record")], ["IMG 4.jpg", photo.bytes, 1200, 1600], "the photograph on record");
  return fact;
}

/** On the orders page, with the desk's own browser. */
async function theOfficeSeesIt(browser) {
  await program.run("publish", ["--draft", "--out", site]);
  const desk = await device(browser, WIDTHS[2], program.address);
  await desk.page.goto(urlOf(path.resolve(site), "office/orders.html"));
  const small = desk.page.getByRole("img", { name: "IMG 4.jpg" });
  await small.scrollIntoViewIfNeeded();
  must(await small.evaluate((image) => image.decode().then(() => image.naturalWidth > 0)), "the photograph is not shown");
  await small.click();
  await desk.page.waitForFunction(() => document.images[0]?.naturalHeight === 1600);
  same(desk.faults, [], "what the office's pages complain of");
}

async function theOfficeConfirms(fact) {
  const now = new Date().toISOString().slice(0, 10);
  same((await program.stands(now)).Rug, "approved", "the rug before anybody confirmed what came");
  await program.run("receive", ["--confirm", fact.response.slice(0, 8), "--by", "Ines Rowe"]);
  const stands = await program.stands(now);
  same([stands.Rug, stands.Pulls], ["came otherwise than approved", "approved"], "what stands");
  must(!program.log.join("\n").includes("grey"), "what was written is in the log of the server");
}

await program.host();
const browser = await launch("127.0.0.1");
try {
  const phone = await device(browser, WIDTHS[0], program.address);
  await opensInTheMorning(phone);
  await looksAtWhatCame(phone);
  await opensAgain(phone);
  await theOfficeConfirms(await handsOverAtTheGate(phone));
  await theOfficeSeesIt(browser);
  same(phone.faults.filter((fault) => !/ERR_(INTERNET_DISCONNECTED|FAILED|CONNECTION_REFUSED)/.test(fault)), [], "what the page complains of");
} finally {
  await browser.close();
  await program.stop();
}
