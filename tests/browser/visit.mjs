// Visits one page: at each width, by day and by night, without scripts.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { insideFolder, urlOf } from "./folder.mjs";
import * as inPage from "./in_page.mjs";
import { NARROWEST, WIDTHS } from "./launch.mjs";

const axeSource = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const AXE = {
  runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
  resultTypes: ["violations"],
  preload: false, // a page opened from a disk may not fetch its own styles
};

/** Hears what a page complains of and asks for, and reports it while `report` is set. */
export function listen(page, folder) {
  const ear = { report: null };
  const hear = (check, fault) => ear.report?.(check, fault);
  page.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) hear("console", message.text());
  });
  page.on("pageerror", (error) => hear("console", String(error)));
  page.on("request", (request) => {
    const url = request.url();
    if (/^(data|blob|about):/.test(url)) return;
    if (insideFolder(folder, url) === null) hear("request", `asks for ${url}`);
  });
  page.on("requestfailed", (request) => {
    // Given up by the browser itself: a wider window has it take another size of the same picture.
    if (request.failure()?.errorText === "net::ERR_ABORTED") return;
    if (insideFolder(folder, request.url()) !== null) hear("request", `does not get ${decodeURI(request.url())}`);
  });
  return ear;
}

export async function open(page, url) {
  await page.goto(url, { waitUntil: "load" });
  await page.evaluate(inPage.installNames);
}

/** Looks at a page at every width; returns what it points at and how much it says. */
export async function visit(page, ear, folder, name, fault) {
  let width = WIDTHS[0].width;
  const say = (check, text) => fault(name, width, check, text);
  const sayAll = (check, texts) => texts.forEach((text) => say(check, text));
  ear.report = say;
  await page.setViewportSize(WIDTHS[0]);
  await page.emulateMedia({ colorScheme: "light" });
  await open(page, urlOf(folder, name));
  sayAll("viewport", await page.evaluate(inPage.viewport));
  let eager = null;
  for (const size of WIDTHS) {
    width = size.width;
    await page.setViewportSize(size);
    const pictures = await page.evaluate(inPage.pictures);
    sayAll("image", pictures.broken);
    if (!eager) {
      sayAll("image-size", pictures.shape);
      sayAll("image-alt", pictures.words);
      eager = pictures.eagerBelow;
    }
    sayAll("request", await page.evaluate(inPage.fonts));
    sayAll("sideways-scroll", await page.evaluate(inPage.sideways));
    sayAll("small-text", await page.evaluate(inPage.smallText));
    sayAll("overlaid", await page.evaluate(inPage.overlaid));
    if (width !== WIDTHS[1].width) await accessibility(page, width, say);
  }
  width = NARROWEST.width;
  await page.setViewportSize(NARROWEST);
  sayAll("sideways-scroll", await page.evaluate(inPage.sideways));
  width = null;
  eager.forEach((image) => say("image-lazy", `${image} is below the first screen and is not loaded lazily`));
  const pointers = await page.evaluate(inPage.pointers);
  const reading = await page.evaluate(inPage.reading);
  return { ...pointers, reading };
}

/** The widest is looked at by night, so that both sets of colours are checked. */
async function accessibility(page, width, say) {
  const colorScheme = width === WIDTHS[2].width ? "dark" : "light";
  await page.emulateMedia({ colorScheme });
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(axeSource);
  const { violations } = await page.evaluate((options) => axe.run(document, options), AXE);
  for (const { id, help, nodes } of violations) {
    const places = nodes.slice(0, 3).map((node) => node.target.join(" "));
    say("accessibility", `${id}: ${help}: ${places.join("; ")}${nodes.length > 3 ? ` and ${nodes.length - 3} more` : ""}`);
  }
}

/** Reads the page with scripts off; `before` is how it read with them. */
export async function withoutScripts(page, ear, folder, name, before, fault) {
  const { width } = WIDTHS[0];
  const say = (text) => fault(name, width, "no-script", text);
  ear.report = (_, text) => say(text);
  await open(page, urlOf(folder, name));
  const now = await page.evaluate(inPage.reading);
  if (!now.heading) say("no heading is seen");
  if (now.words < before.words * 0.8) say(`${now.words} words are seen, of ${before.words} with scripts`);
  const unsaid = await page.evaluate(() => {
    document.getAnimations().forEach((one) => one.finish());
    return [...document.querySelectorAll("[data-unscripted]")].filter((one) => !one.checkVisibility({ visibilityProperty: true }) || !one.offsetHeight).length;
  });
  if (unsaid) say("does not say that its scripts do not run");
  (await page.evaluate(inPage.pictures)).broken.forEach(say);
  (await page.evaluate(inPage.sideways)).forEach(say);
}
