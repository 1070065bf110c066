// Answers on the sheet for signature, as a person gives them there: deciding, signing, sending, saving.
import path from "node:path";

export const row = (page, name) => page.locator("#deciding details").filter({ has: page.locator("summary b", { hasText: new RegExp(`^${name}$`) }) });

/** Decides on one item, in its row of the sheet for signature. */
export async function decide(page, name, says, { option, note } = {}) {
  const line = row(page, name);
  if (!(await line.evaluate((one) => one.open))) await line.locator("summary").click();
  if (option) await line.getByRole("group", { name: "Which one" }).getByRole("radio", { name: option }).check();
  await line.getByRole("group", { name: "What you say to it" }).getByRole("radio", { name: new RegExp(`^${says}\\b(?! as)`) }).check();
  if (note) await line.getByLabel("Note to the designer").fill(note);
}

export async function sign(page, name) {
  await page.getByLabel("Your name, typed").fill(name);
  await page.getByRole("button", { name: /^Sign th/ }).click();
  await page.getByText(`Signed by ${name}`).waitFor();
}

/** A stroke of a finger where a signature is drawn. */
export async function draws(page) {
  const pad = page.locator("svg.pad");
  await pad.scrollIntoViewIfNeeded();
  const { x, y } = await pad.boundingBox();
  await page.mouse.move(x + 30, y + 40);
  await page.mouse.down();
  for (let at = 0; at < 30; at++) await page.mouse.move(x + 30 + at * 6, y + 40 + 20 * Math.sin(at / 3));
  await page.mouse.up();
}

/** Sends what was signed, and waits until the page says `answer`. */
export async function post(page, answer) {
  await page.getByRole("button", { name: "Send to the office" }).click();
  await page.getByText(answer).first().waitFor();
}

/** Saves what was signed as a file in a folder. */
export async function save(page, folder) {
  const [given] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save the file" }).click()]);
  const file = path.join(folder, `${Date.now()}-${given.suggestedFilename()}`);
  await given.saveAs(file);
  return file;
}
