// node readings.mjs SITE SHEET: an opening's sheet judges readings as they are typed, keeps them and hands them over.
// The opening asks a width of 30″ to 30 1/2″ for a thing 29 3/4″ wide.
import { readFile } from "node:fs/promises";
import { isSound, must, onEachDevice, same, tabTo } from "./acts.mjs";

const [site, sheet] = process.argv.slice(2);

await onEachDevice(site, async ({ page, go, size }) => {
  await go(sheet);
  const width = (at) => page.getByLabel(`Width ${at}`), verdict = page.locator("#readings .said");
  const says = async (words) => {
    const found = (await verdict.innerText()).replace(/\s+/g, " ");
    must(found.includes(words), `“${found}” does not say “${words}”`);
  };
  await tabTo(page, width("at the floor"), "the first reading");
  await page.keyboard.type("30 1/16");
  await says("Width fits 30 1/16″ (764 mm) governs: 1/16″ (1.6 mm) more than is needed. Beside the thing itself 5/32″ (4 mm) is left on each side.");
  // It stands at the line too: the list of what is found is far below on a telephone.
  const told = async () => (await page.locator(".taps .told").allInnerTexts()).map((text) => text.trim());
  same(await told(), ["Width fits"], "what stands at the line");
  const [line, word] = [await width("at the floor").boundingBox(), await page.locator(".taps .told").boundingBox()];
  must(word.y >= line.y && word.y < line.y + line.height + 60, "it stands away from its line");
  await width("in the middle").fill("2' 5 7/8\"");
  await says("Width is too small 29 7/8″ (759 mm) governs: 1/8″ (3.2 mm) too little. Stop, and call the office.");
  await width("in the middle").fill("78 cm");
  await says("Width is too large");
  await width("in the middle").fill("30⅛");
  await width("at the top").fill("a bit over 30");
  await says("Width: not a length yet");
  must((await told()).includes("Width: not a length yet"), "no word at the line that holds no length");
  same(await width("at the top").getAttribute("aria-invalid"), "true", "a reading that is none");
  await isSound(page, `the sheet with a faulty reading at ${size.width} px`);
  await width("at the top").fill("");
  await page.getByLabel("Depth").fill("<img src=x onerror=alert(1)>");
  await says("Depth: not a length yet");
  await page.getByLabel("Depth").fill("24 1/2");
  await says("Depth fits");

  // The floor is still to be laid: the form shows what it takes off.
  const height = page.getByLabel("Height at the left");
  await height.fill("71 1/2");
  await says("Height fits");
  await says("71 1/2″ (1816 mm) less 3/4″ (19 mm) of floor still to come = 70 3/4″ (1797 mm).");
  await height.fill("70 1/2");
  await says("Height is too small");
  // The form names the floor, and takes nothing off once that is laid.
  const floor = page.getByRole("group", { name: "Heights are read from" });
  must(await floor.getByLabel("today’s floor, 3/4″ (19 mm) still to come").isChecked(), "the book's own floor");
  await floor.getByLabel("the finished floor, which is laid").check();
  await says("Height fits 70 1/2″ (1791 mm) governs");
  must(!(await verdict.innerText()).includes("still to come"), "a floor that is laid takes off");
  await height.fill("");

  // What else is read is judged where the sheet asks for something, and handed over where it does not.
  await page.getByLabel("Clear floor in front").fill("42");
  await says("Clear floor in front: read It reads 42″ (1067 mm).");
  await page.getByLabel("Clear floor in front").fill("");

  // Every width is enough, and yet the bay leans in; then its diagonals differ.
  const plumb = (side, at) => page.getByLabel(`Plumb to ${side} side, ${at}`);
  const leaning = [[plumb("left", "floor"), "1"], [plumb("left", "top"), "1 1/4"], [plumb("right", "floor"), "31"]];
  for (const [line, length] of leaning) await line.fill(length);
  await says("Plumb line: read both sides at the same heights");
  await plumb("right", "top").fill("31");
  await says("Width is too small 29 3/4″");
  await says("By the plumb line");
  await says("Out of square Over its height a side leans by 1/4″");
  await isSound(page, `the sheet with a leaning bay at ${size.width} px`);
  for (const [line] of [...leaning, [plumb("right", "top")]]) await line.fill("");
  await page.getByLabel("Diagonal, foot at the left").fill("76");
  await page.getByLabel("Diagonal, foot at the right").fill("76 1/16");
  await says("Square Out by 1/16″");
  for (const at of ["left", "right"]) await page.getByLabel(`Diagonal, foot at the ${at}`).fill("");

  // A number without a unit counts as the sheet is told; one with a unit stays what it is.
  await page.getByRole("radio", { name: "millimetres" }).check();
  await says("Width is too small");
  await width("at the floor").fill("764.4");
  await width("in the middle").fill("765");
  await says("Width fits");
  await page.getByLabel("Measured by").fill("Noor Tembley");
  await height.fill("1800");

  await page.reload();
  same(await width("at the floor").inputValue(), "764.4", "a reading after the page was opened again");
  same(await page.getByLabel("Measured by").inputValue(), "Noor Tembley", "who measured");
  must(await page.getByRole("radio", { name: "millimetres" }).isChecked(), "the unit is forgotten");
  await says("Width fits");
  await isSound(page, `the sheet with readings at ${size.width} px`);

  if (process.argv[4] === "issued") await handOver(page);
  else must(await page.getByText("Readings can be handed over once the office has made an issue.").isVisible(), "no word on handing over");
});

async function handOver(page) {
  const files = [];
  for (let times = 0; times < 2; times++) {
    const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save the file" }).click()]);
    files.push(await readFile(await download.path(), "utf8"));
    must(/^bookmatch-[0-9a-f]{8}-readings-\d{4}-\d\d-\d\d\.json$/.test(download.suggestedFilename()), download.suggestedFilename());
  }
  same(files[0], files[1], "the same readings handed over twice");
  const { format, by, readings, nonce } = JSON.parse(files[0]);
  same([format, by, nonce.length], ["bookmatch readings 1", "Noor Tembley", 32], "the file");
  const expected = [["depth", null, "24500000", null], ["height", "left", "1800000000", "finished-floor"], ["width", "floor", "764400000", null], ["width", "middle", "765000000", null]];
  same(readings.map(({ what, at, length, from }) => [what, at, length, from ?? null]).sort(), expected, "its readings");
}
