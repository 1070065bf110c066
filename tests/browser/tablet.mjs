// node tablet.mjs PROGRAM BOOK SITE PORT: Ada and Sven share one tablet, each with a private link. Nothing that the one
// began, signed or holds is shown to the other, and the office knows in which order the tablet said what.
import { readFileSync } from "node:fs";
import path from "node:path";
import { must, same } from "./acts.mjs";
import { decide, draws, post, row, save, sign } from "./answers.mjs";
import { device } from "./device.mjs";
import { launch, WIDTHS } from "./launch.mjs";
import { Program } from "./program.mjs";

const [binary, book, site, port] = process.argv.slice(2);
const program = new Program(binary, book, site, port);
const NOTE = "Only if it is lighter than my mother’s";
const invited = async (who) => (await program.run("invite", ["--for", who, "--address", `${program.address}/client`])).match(/http\S+/)[0];
const decided = () => program.facts().filter(({ is }) => is === "decided");

async function opens(page, link, name) {
  // Whoever hands a tablet over takes a moment: what was just kept reaches the disk a little after the script that kept it.
  await page.waitForTimeout(500);
  await page.goto("about:blank");
  await page.goto(link);
  await page.getByText(`Deciding as ${name}, by private link`).waitFor();
}


/** Ada signs, sends, and begins something else that she does not sign. */
async function ada(page, link) {
  await opens(page, link, "Ada Okonedo");
  await decide(page, "Runner", "Approved as noted", { note: NOTE });
  await draws(page);
  await sign(page, "Ada Okonedo");
  await post(page, "It has arrived at the office: recorded");
  const file = await save(page, path.dirname(book));
  must((await shown(page)).includes(JSON.parse(readFileSync(file, "utf8")).signed.drawing), "her own page does not show what she drew");
  await decide(page, "Mirror", "Rejected");
  return file;
}

/** All that the page shows, holds in its fields and draws. */
const shown = (page) => page.evaluate(() => [
  document.body.innerText,
  ...[...document.querySelectorAll("input:not([type=radio]):not([type=checkbox]), textarea")].map((field) => field.value),
  ...[...document.querySelectorAll("#deciding input:checked")].map((field) => `checked ${field.value}`),
  ...[...document.querySelectorAll("path")].map((path) => path.getAttribute("d")),
].join("\n"));

/** Sven takes the tablet with his own link. */
async function sven(page, links, file) {
  await opens(page, links.sven, "Sven Lindqvist");
  for (const name of ["Runner", "Mirror"]) await row(page, name).locator("summary").click();
  const seen = await shown(page);
  const { drawing } = JSON.parse(readFileSync(file, "utf8")).signed;
  must(drawing.length > 20, `Ada drew “${drawing}”`);
  for (const hers of [NOTE, "Signed by Ada", "checked ", drawing]) must(!seen.includes(hers), `Sven is shown “${hers}”`);
  must(seen.includes("0 of 5 decided"), "what Ada decided counts as Sven’s");
  const held = await page.evaluate(() => JSON.stringify(Object.entries(localStorage)));
  const key = Buffer.from(links.ada.split("&key=")[1], "base64url").toString("hex");
  must(!held.includes(key) && !held.includes(links.ada.split("&key=")[1]), "Ada’s key is left on the tablet");
  must((await page.getByRole("button", { name: "Send to the office" }).count()) === 0, "what Ada signed can be sent as Sven’s");
  await decide(page, "Runner", "Approved");
  await sign(page, "Sven Lindqvist");
  await post(page, "It has arrived at the office: recorded");
}

/** Ada takes it again: what she began is hers, and what Sven signed is not. */
async function adaAgain(page, links, file) {
  await opens(page, links.ada, "Ada Okonedo");
  await row(page, "Mirror").locator("summary").click();
  const seen = await shown(page);
  must(!seen.includes("Signed by Sven"), "Ada is shown what Sven signed");
  must(seen.includes("checked rejected"), "what Ada began is gone");
  const held = await page.evaluate(() => JSON.stringify(Object.entries(localStorage)));
  must(!held.includes(Buffer.from(links.sven.split("&key=")[1], "base64url").toString("hex")), "Sven’s key is left on the tablet");
  await decide(page, "Runner", "Approved");
  await sign(page, "Ada Okonedo");
  await post(page, "It has arrived at the office: recorded");
  // The file of her first word is mailed after all that.
  must((await program.run("receive", [file])).includes(": already recorded"), "the same word twice");
}

await program.run("issue", ["--for", "approval", ...program.on("2027-01-15")]);
await program.publish("2027-01-15");
await program.host();
const browser = await launch("127.0.0.1");
try {
  const tablet = await device(browser, WIDTHS[1], program.address);
  const links = { ada: await invited("ada"), sven: await invited("sven") };
  const file = await ada(tablet.page, links.ada);
  await sven(tablet.page, links, file);
  await adaAgain(tablet.page, links, file);
  const facts = decided();
  same(new Set(facts.map(({ device: { id } }) => id)).size, 1, "how many devices the office heard of");
  same(facts.map(({ who, by, device: { turn } }) => [who, by, turn]), [["ada", "private link", 1], ["sven", "private link", 2], ["ada", "private link", 3]], "in which order the tablet said what");
  same((await program.stands("2027-01-15")).Runner, "approved", "the runner");
  const log = program.log.join("\n");
  for (const link of Object.values(links)) must(!log.includes(link.split("&key=")[1]), "a key is in the log of the server");
  same(tablet.faults, [], "what the pages complain of");
} finally {
  await browser.close();
  await program.stop();
}
