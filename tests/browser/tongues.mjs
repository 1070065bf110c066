// node tongues.mjs CLIENT: a client decides in Spanish, signs in English, and finds the signature in Spanish again.
import { readFile } from "node:fs/promises";
import { isSound, must, onEachDevice, same } from "./acts.mjs";

const site = process.argv[2];

/** By the link in the page, which needs no server. */
async function reads(page, tag) {
  await page.locator(`.tongues a[lang=${tag}]`).click();
  same(await page.evaluate(() => document.documentElement.lang), tag, "the language of the page");
}

await onEachDevice(site, async ({ page, go, size }) => {
  await go("items/kitchen/range.html");
  await reads(page, "es");
  await page.getByRole("radio", { name: "Odile Quillarn" }).check();
  await page.getByRole("group", { name: "Cuál" }).getByRole("radio", { name: /^B,/ }).check();
  await page.getByRole("group", { name: "Qué dice de ella" }).getByRole("radio", { name: /^Aprobado(?! con)/ }).check();
  await page.getByText(/^Guardado en este aparato, /).waitFor();
  await isSound(page, `the item in Spanish at ${size.width} px`);
  await reads(page, "en");
  must(await page.getByRole("group", { name: "Which one" }).getByRole("radio", { name: /^B,/ }).isChecked(), "the option is forgotten in English");
  must(await page.getByRole("group", { name: "What you say to it" }).getByRole("radio", { name: /^Approved(?! as)/ }).isChecked(), "the decision is forgotten in English");
  await page.getByRole("link", { name: "Go on to the signature" }).click();
  await page.getByLabel("Your name, typed").fill("Odile Quillarn");
  await page.getByRole("button", { name: "Sign this decision" }).click();
  await page.getByText("Signed by Odile Quillarn").waitFor();
  const [given] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save the file" }).click()]);
  const response = JSON.parse(await readFile(await given.path(), "utf8"));
  same([response.who, response.items.length], ["odile", 1], "what was decided in Spanish and signed in English");
  must(response.signed.statement.startsWith("I have seen these items"), "the statement is not in the language that was read");
  await reads(page, "es");
  await page.getByText("Firmado por Odile Quillarn").waitFor();
  must((await page.content()).includes("I have seen these items"), "what was signed is told in other words than it was signed in");
});
