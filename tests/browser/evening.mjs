// node evening.mjs PROGRAM BOOK SITE PORT: a client's evening and an installer's readings in WebKit and in Gecko, at a
// telephone's width: the private link, choosing, keeping, signing, handing over, and opening again without a server,
// which is tried in Chromium too.
import { must, same } from "./acts.mjs";
import { inEachEngine } from "./engines.mjs";
import { launch, WIDTHS } from "./launch.mjs";
import { Program } from "./program.mjs";

const [binary, book, site, port] = process.argv.slice(2);
const program = new Program(binary, book, site, port);
const DAY = "2027-01-15", NOTE = "Feet first, “<img src=x>” – naïve";

const says = (page, words) => page.until((words) => document.body.innerText.replace(/\s+/g, " ").includes(words), words);
const decided = () => program.facts().filter((fact) => fact.is === "decided");

async function fitsTheScreen(page, what) {
  const [wide, screen] = await page.run(() => [document.documentElement.scrollWidth, innerWidth]);
  must(wide <= screen, `${what} is ${wide} pixels wide on a screen of ${screen}`);
}

const rowOf = (name) => [...document.querySelectorAll("#deciding details")].find((one) => one.querySelector("summary b").textContent === name);

/** Opens the row of an item and crosses its boxes. */
async function decides(page, name, crosses, note) {
  await page.click(`(name) => (${rowOf})(name).querySelector("summary")`, name);
  for (const words of crosses) {
    await page.click(`(name, words) => [...(${rowOf})(name).querySelectorAll("label")].find((one) => one.querySelector("b")?.textContent === words && one.offsetParent)`, name, words);
  }
  if (note) await page.type(note, `(name) => (${rowOf})(name).querySelector("textarea")`, name);
}

const button = (words) => [...document.querySelectorAll("button")].find((one) => one.textContent.trim().startsWith(words) && one.offsetParent);

async function client(page, link, who) {
  await page.go(link);
  await says(page, `Deciding as ${who.name}, by private link`);
  must(!(await page.url()).includes("key="), "the key stands in the address bar");
  await fitsTheScreen(page, "the sheet for signature");
  await decides(page, "Rug", ["A, Oak", "Approved"]);
  await decides(page, "Runner", ["Approved as noted"], NOTE);
  await says(page, "2 of 5 decided");
  // Opened again, it knows what was decided.
  await page.go(new URL("index.html", link).href);
  await page.go(new URL("sign.html", link).href);
  await says(page, "2 of 5 decided");
  await page.type(who.name, () => document.getElementById("typed"));
  await page.click(button, "Sign these 2 decisions");
  await says(page, `Signed by ${who.name}`);
  await page.click(button, "Save the file");
  await page.until(() => document.querySelector(".past li")?.textContent.includes("saved as a file"));
  await page.click(button, "Send to the office");
  await says(page, "It has arrived at the office: recorded");
  const fact = decided().find((fact) => fact.who === who.id);
  must(fact, `nothing of ${who.name} is on record`);
  same([fact.by, fact.signed.name], ["private link", who.name], "how it is on record");
  same(fact.items.map(({ item, decision, note }) => [item, decision, note]).sort(), [["rug", "approved", undefined], ["runner", "approved as noted", NOTE]], "what is on record");
}

async function installer(page) {
  await page.go(`${program.address}/installer/openings/hall/niche.html`);
  await fitsTheScreen(page, "the opening's sheet");
  await page.type("24 7/8", () => document.getElementById("tape-width-floor"));
  await says(page, "Width fits");
  await page.type("Noor Tembley", () => document.getElementById("tape-by"));
  await page.go(`${program.address}/installer/openings/hall/niche.html`);
  same(await page.run(() => [document.getElementById("tape-width-floor").value, document.getElementById("tape-by").value]), ["24 7/8", "Noor Tembley"], "what was measured, opened again");
  await page.click(button, "Send to the office");
  await says(page, "It has arrived at the office");
}

/** Without its server a page that was opened opens again, with its styles and what is told on each. */
async function opensAgain(page, told) {
  const pages = [`${program.address}/client/sign.html`, `${program.address}/installer/openings/hall/niche.html`];
  for (const url of pages) {
    await page.go(url);
    await page.until(() => navigator.serviceWorker?.controller && document.readyState === "complete");
    await page.go(url);
  }
  await program.stop();
  for (const [url, words] of [[pages[0], told[0]], [pages[1], told[1]]]) {
    await page.go(url);
    await says(page, words);
    must(await page.run(() => getComputedStyle(document.querySelector("h1")).fontFamily.includes("Literata") || document.styleSheets.length > 1), `${url} lost its styles`);
  }
  await program.host();
}

/** The same in Chromium, where the evening itself is tried by scripts of its own. */
async function opensAgainInChromium() {
  const browser = await launch("127.0.0.1");
  try {
    const page = await browser.newPage({ viewport: WIDTHS[0] });
    const steps = {
      go: (url) => page.goto(url),
      run: (asked) => page.evaluate(asked),
      until: (asked, words) => page.waitForFunction(asked, words),
    };
    await opensAgain(steps, ["Runner", "Width at the floor"]);
    // What was not opened does not open: it is the keeper that answers, and no server.
    await program.stop();
    const absent = await page.goto(`${program.address}/client/index.html`).then((answer) => answer.ok(), () => false);
    must(!absent, "a page that was never opened came from somewhere");
  } finally {
    await browser.close();
  }
}

await program.run("issue", ["--for", "approval", ...program.on(DAY)]);
await program.publish(DAY);
await program.host();
const people = [{ id: "ada", name: "Ada Okonedo" }, { id: "sven", name: "Sven Lindqvist" }];
try {
  await inEachEngine(async (page) => {
    const who = people.shift();
    const said = await program.run("invite", ["--for", who.id, "--address", `${program.address}/client`]);
    await client(page, said.match(/http\S+/)[0], who);
    await installer(page);
    await opensAgain(page, ["Signed by", "Width fits"]);
  });
  await opensAgainInChromium();
} finally {
  await program.stop();
}
