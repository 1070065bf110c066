// node acknowledge.mjs SITE FILE: the first page of the trades says that its issue came to hand, and saves that to FILE.
import { isSound, must, onEachDevice, same } from "./acts.mjs";
import { readFile, writeFile } from "node:fs/promises";
const [site, out] = process.argv.slice(2);
await onEachDevice(site, async ({ page, go, size }) => {
  await go("index.html");
  await isSound(page, `the first page at ${size.width} px`);
  const button = page.getByRole("button", { name: "I have issue 1" });
  await button.click();
  must(await page.getByText("Write your name first.").isVisible(), "no word on the name");
  await page.getByLabel("Name").fill("Teo Varrick");
  await button.click();
  await isSound(page, `the first page with a name at ${size.width} px`);
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save the file" }).click()]);
  const said = await readFile(await download.path(), "utf8");
  same([JSON.parse(said).format, JSON.parse(said).by], ["bookmatch acknowledgement 1", "Teo Varrick"], "the file");
  if (size.width < 500) await writeFile(out, said);
});
