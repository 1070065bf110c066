// node receiving.mjs SITE PAGE FILE YARD GRAVEL: a delivery is received on a telephone that has no signal: one thing as approved,
// one in another finish that was taken, with two photographs and one that is none; and what was said is saved to FILE.
import { readFile, writeFile } from "node:fs/promises";
import { isSound, must, onEachDevice, same } from "./acts.mjs";
import { isPlain } from "./photographs.mjs";

const [site, sheet, out, yard, gravel] = process.argv.slice(2);

await onEachDevice(site, async ({ page, go, size }) => {
  await page.context().setOffline(true);
  await go(sheet);
  const text = async () => (await page.locator("main").innerText()).replace(/\s+/g, " ");
  must(!/\$|100\.00|12\.00/.test(await text()), "a price is on the page");
  const section = (name) => page.locator("section.came", { has: page.getByRole("heading", { name }) });
  const says = async (words) => {
    const found = (await page.locator("#delivery > .form").innerText()).replace(/\s+/g, " ");
    must(found.includes(words), `“${found}” does not say “${words}”`);
  };
  await says("Nothing is looked at yet.");
  await isSound(page, `the delivery before anything at ${size.width} px`);

  await section("Pulls").getByRole("button", { name: "All of it came as approved" }).click();
  await says("Pulls: As approved");
  await says("Write who received it, and the number of the delivery note.");

  const rug = section("Rug");
  const came = (of, how) => rug.getByRole("group", { name: `${of}: it came` }).getByLabel(how, { exact: true });
  await came("Finish", "Different").check();
  await says("K-01 Rug: still to look at:");
  await says("It can be handed over once all of each thing that came is looked at.");
  await rug.getByRole("button", { name: "All of it came as approved" }).click();
  must(await came("Finish", "Different").isChecked(), "the shortcut wrote over what was said");
  await says("K-01 Rug: say what came instead (Finish)");
  await rug.getByLabel("Finish: what came instead, or what is damaged").fill("<b>grey</b> oak");
  await says("K-01 Rug: say what became of it");
  await rug.getByLabel("Taken all the same").check();
  await says("K-01 Rug: Different It is another than was signed. Set nothing of it until it is approved anew. Claim it by");
  const picks = rug.getByLabel("Photographs", { exact: true });
  await picks.setInputFiles({ name: "box.jpg", mimeType: "image/jpeg", buffer: Buffer.from("a photograph") });
  await rug.getByText("box.jpg: its name alone goes with the delivery").waitFor();
  await rug.getByText("This browser can't read box.jpg. Its name alone goes with the delivery. Send the photograph beside it.").waitFor();
  await picks.setInputFiles([yard, gravel]);
  const shots = rug.locator(".shots img");
  await shots.nth(1).waitFor();
  // A photograph that is picked twice is there once; one that is left out is gone.
  await picks.setInputFiles([gravel]);
  await page.waitForFunction(() => ![...document.querySelectorAll("input[type=file]")].some((input) => input.disabled));
  same(await shots.count(), 2, "photographs that are shown");
  await rug.getByRole("button", { name: "Leave out gravel.jpg" }).click();
  same(await shots.count(), 1, "photographs once one is left out");
  await picks.setInputFiles([gravel]);
  await shots.nth(1).waitFor();
  await page.getByLabel("Received by").fill("Noor Tembley");
  await page.getByLabel("Number of the delivery note").fill("4711");
  await says("2 items of this delivery, received by Noor Tembley, are ready to be handed over. 2 photographs go with it. Of some photographs the name alone goes with it.");
  await isSound(page, `the delivery at ${size.width} px`);

  await page.reload();
  must(await came("Finish", "Different").isChecked(), "what was said is forgotten");
  await says("K-01 Rug: Different");
  await says("2 photographs go with it.");
  same(await shots.count(), 2, "photographs that the device kept");
  const files = [];
  for (let times = 0; times < 2; times++) {
    const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save the file" }).click()]);
    must(/^bookmatch-[0-9a-f]{8}-delivery-\d{4}-\d\d-\d\d\.json$/.test(download.suggestedFilename()), download.suggestedFilename());
    files.push(await readFile(await download.path(), "utf8"));
  }
  same(files[0], files[1], "the same delivery handed over twice");
  const { format, delivery, items, photographs } = JSON.parse(files[0]);
  same([format, delivery], ["bookmatch delivery 1", { from: "Ardwin", note: "4711" }], "the file");
  const { kept, lines, photos } = items.find(({ item }) => item === "rug");
  same([kept, lines.find(({ of }) => of === "finish"), photos[0].name], ["taken", { came: "different", of: "finish", words: "<b>grey</b> oak" }, "box.jpg"], "what is said of the rug");
  // SHA-256 of the words, by sha256sum.
  same(photos[0].sha256, "a249e87e1e6113da81cdd8a154c222283fbcceff6dd3727a63bf97eee562dfb3", "the photograph's digest");
  const carried = photos.slice(1).map(({ name, sha256, bytes }) => {
    const picture = Buffer.from(photographs[sha256], "base64");
    same(picture.length, bytes, `the bytes of ${name}`);
    return [name, ...isPlain(picture, sha256, name)];
  });
  same([Object.keys(photographs).length, carried[0]], [2, ["IMG 4.jpg", 1200, 1600]], "it is turned upright and made smaller");
  same([carried[1][0], carried[1][1] < 1600], ["gravel.jpg", true], "what packs badly is made smaller still");
  if (size.width < 500) await writeFile(out, files[0]);
  await Promise.all([page.waitForEvent("load"), page.getByRole("button", { name: "Begin another delivery" }).click()]);
  await says("Nothing is looked at yet.");
  same(await page.locator(".shots img").count(), 0, "photographs of the delivery before");
});
