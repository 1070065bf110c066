// node shared.mjs CLIENT: two who decide share one device, and neither can sign with the other's key.
import { createHmac } from "node:crypto";
import { readFile } from "node:fs/promises";
import { must, onEachDevice, same } from "./acts.mjs";

const site = process.argv[2];
const keys = { odile: Buffer.alloc(32, 1), samir: Buffer.alloc(32, 2) };
const linkOf = (who) => `sign.html#for=${who}&key=${keys[who].toString("base64url")}`;
const named = (page, name) => page.getByText(`Deciding as ${name}, by private link`);

/** Decides on the sink, signs, and gives the file that would be handed over. */
async function signs(page, name) {
  const line = page.locator("#deciding details").filter({ has: page.locator("summary b", { hasText: /^Sink$/ }) });
  if (!(await line.evaluate((one) => one.open))) await line.locator("summary").click();
  await line.getByRole("group", { name: "What you say to it" }).getByRole("radio", { name: /^Rejected/ }).check();
  return signsAgain(page, name);
}

async function signsAgain(page, name) {
  await page.getByLabel("Your name, typed").fill(name);
  await page.getByRole("button", { name: "Sign this decision" }).click();
  await page.getByText(`Signed by ${name}`).waitFor();
  const [given] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save the file" }).click()]);
  return readFile(await given.path(), "utf8");
}

function isSealedBy(text, who) {
  const { mac, who: said } = JSON.parse(text), bare = text.replace(`"mac":"${mac}",`, "");
  same([said, mac], [who, createHmac("sha256", keys[who]).update(bare).digest("hex")], "whose, and under which key");
}

/** Odile's link, then Samir's; then whoever holds the device says that it is Odile. */
async function takesTheOthersName(page, go) {
  await go(linkOf("odile"));
  await named(page, "Odile Quillarn").waitFor();
  await go(linkOf("samir"));
  await named(page, "Samir Ostrevy").waitFor();
  await page.getByRole("button", { name: "I am not Samir Ostrevy" }).click();
  await page.getByRole("radio", { name: "Odile Quillarn" }).click();
  must((await named(page, "Odile Quillarn").count()) === 0, "a name that was chosen has the key of a link that was opened before");
  const response = JSON.parse(await signs(page, "Odile Quillarn"));
  same([response.who, response.mac], ["odile", undefined], "what is signed under a name that was chosen");
  const kept = await page.evaluate(() => Object.entries(localStorage).filter(([name, value]) => name.includes(" key ") && value !== "null").length);
  same(kept, 0, "keys that are left on the device");
}

/** Her link does not seal what somebody signed in her name: she reads it and signs. */
async function signsHerself(page, go) {
  await go(linkOf("odile"));
  await named(page, "Odile Quillarn").waitFor();
  must((await page.getByRole("button", { name: "Save the file" }).count()) === 0, "what was signed before the link came can be handed over as hers");
  isSealedBy(await signsAgain(page, "Odile Quillarn"), "odile");
  await go(linkOf("samir"));
  await named(page, "Samir Ostrevy").waitFor();
  isSealedBy(await signs(page, "Samir Ostrevy"), "samir");
  await go(linkOf("odile"));
  await named(page, "Odile Quillarn").waitFor();
  isSealedBy(await page.evaluate(() => Seal.canonical(Answer.state().response)), "odile");
}

/** A second window is given to the other: the first says so, and signs nothing that it does not show. */
async function opensTwoWindows(page, go) {
  await go(linkOf("odile"));
  const other = await page.context().newPage();
  await other.goto(page.url().replace(/#.*/, "") + linkOf("samir").slice("sign.html".length));
  await named(other, "Samir Ostrevy").waitFor();
  await named(page, "Samir Ostrevy").waitFor();
  await other.close();
}

await onEachDevice(site, async ({ page, go }) => {
  await takesTheOthersName(page, go);
  await signsHerself(page, go);
  await opensTwoWindows(page, go);
});
