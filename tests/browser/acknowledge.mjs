// node acknowledge.mjs SITE FILE PAGE…: from each page of the trades somebody says that its issue came to hand, and saves
// that to FILE; every other page knows it then.
import { isSound, must, onEachDevice, same } from "./acts.mjs";
import { readFile, writeFile } from "node:fs/promises";
const [site, out, ...pages] = process.argv.slice(2);

for (const from of pages) {
  await onEachDevice(site, async ({ page, go, size }) => {
    await go(from);
    await isSound(page, `${from} at ${size.width} px`);
    const button = page.getByRole("button", { name: "I have issue 1" });
    await button.click();
    must(await page.getByText("Write your name first.").isVisible(), `${from}: no word on the name`);
    await page.locator("#holding-by").fill("Teo Varrick");
    await button.click();
    await isSound(page, `${from} with a name at ${size.width} px`);
    const saved = page.locator("#acknowledge").getByRole("button", { name: "Save the file" });
    const [download] = await Promise.all([page.waitForEvent("download"), saved.click()]);
    const said = await readFile(await download.path(), "utf8");
    same([JSON.parse(said).format, JSON.parse(said).by], ["bookmatch acknowledgement 1", "Teo Varrick"], `the file from ${from}`);
    if (size.width < 500) await writeFile(out, said);
    for (const other of pages) {
      await go(other);
      must(await page.getByText("Teo Varrick has issue 1").isVisible(), `${other} does not know what was said on ${from}`);
      must(await button.isHidden(), `${other} asks again`);
    }
  });
}
