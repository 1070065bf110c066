// node deciding.mjs CLIENT: the example's client decides, signs and hands over, from a disk and by the keys alone.
// The book names an address that cannot be reached from here.
import { createHmac } from "node:crypto";
import { readFile } from "node:fs/promises";
import { isSound, must, onEachDevice, same, tabTo } from "./acts.mjs";
import { draws } from "./answers.mjs";

const site = process.argv[2];
const KEY = Buffer.from(Array.from({ length: 32 }, (_, i) => i)).toString("base64url");
const HOSTILE = "Feet to 34 <img src=x onerror=alert(1)> </script><script>alert(2)</script>";

/** What tells of the one address that may be asked, and of nothing else. */
const ofThePost = (fault) => fault.includes("book.example") || fault.includes("ERR_INTERNET_DISCONNECTED") || fault.includes("ERR_NAME_NOT_RESOLVED");

async function download(page) {
  const [given] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save the file" }).click()]);
  return { name: given.suggestedFilename(), text: await readFile(await given.path(), "utf8") };
}

/** Crosses a box by the keys: into the group with tab, along it with the arrows. */
async function cross(page, group, name) {
  const boxes = group.getByRole("radio"), wanted = group.getByRole("radio", { name });
  const entry = (await group.locator("input:checked").count()) ? group.locator("input:checked") : boxes.first();
  await tabTo(page, entry, "the boxes");
  await page.keyboard.press("Space");
  for (let presses = 0; !(await wanted.isChecked()); presses++) {
    must(presses < 12, `the arrows do not reach ${name}`);
    await page.keyboard.press("ArrowDown");
  }
}

async function takesTheLink(page, go) {
  await go(`sign.html#for=odile&key=${KEY}`);
  await page.getByText("Deciding as Odile Quillarn, by private link").waitFor();
  same(new URL(page.url()).hash, "", "what is left of the link in the address bar");
  must(!(await page.content()).includes(KEY), "the key stands on the page");
  await go("sign.html#for=odile&key=tooshort");
  await page.getByText("This private link is not for this book").waitFor();
  await page.getByText("Deciding as Odile Quillarn, by private link").waitFor();
}

async function decidesAnItem(page, go, size) {
  await go("items/kitchen/range.html");
  must(!(await page.locator("#on-paper .boxes").first().isVisible()), "the boxes for paper are still on the screen");
  same(await page.locator("[data-unscripted]").count(), 0, "what says that scripts do not run");
  const group = (name) => page.getByRole("group", { name });
  await touchesCards(page, group("Which one"));
  await cross(page, group("Which one"), /^B,/);
  same(await page.locator(".picked").getAttribute("data-option"), await page.locator("[data-option]").nth(1).getAttribute("data-option"), "the card of what the keys chose");
  await cross(page, group("What you say to it"), /^Approved as noted/);
  await page.getByText("Write the note that must be met.").waitFor();
  await tabTo(page, page.getByLabel("Note to the designer"), "the note");
  await page.keyboard.type(HOSTILE);
  await page.getByText(/^Kept on this device, /).waitFor();
  await isSound(page, `the item at ${size.width} px`);
  await page.reload();
  must(await group("Which one").getByRole("radio", { name: /^B,/ }).isChecked(), "the option is forgotten");
  must(await group("What you say to it").getByRole("radio", { name: /^Approved as noted/ }).isChecked(), "the decision is forgotten");
  same(await page.getByLabel("Note to the designer").inputValue(), HOSTILE, "the note");
}

/** A card is chosen by a touch of it; a link in it, and words that are being copied, are not. */
async function touchesCards(page, group) {
  const cards = page.locator("[data-option]"), picked = (at) => group.getByRole("radio").nth(at).isChecked();
  await cards.nth(1).locator("h3").click();
  must((await picked(1)) && (await cards.nth(1).innerText()).includes("Your choice"), "a touch of the second card does not choose it");
  await cards.nth(0).locator(".pick").click();
  must((await picked(0)) && !(await picked(1)) && (await page.locator(".picked").count()) === 1, "the first card is not chosen in its place");
  await cards.nth(1).locator(".spec dd").first().evaluate((words) => {
    getSelection().selectAllChildren(words);
    words.click();
    getSelection().removeAllRanges();
  });
  must(await picked(0), "whoever copies words from a card chooses it");
}

async function signs(page, go, size) {
  await go("sign.html");
  const running = page.locator("#running"), row = page.locator("#deciding details", { hasText: "Open shelves" });
  const drawn = async () => (await running.innerText()).replace(/\s+/g, " ");
  const before = await drawn();
  same(await page.locator("#deciding h3").allTextContents(), ["Kitchen", "Bath", "Laundry", "Stair hall"], "the rooms of the list");
  // What nobody has confirmed to be Samir's own, his sink, is not told.
  must(/Samir Ostrevy 1 of \d+ decided/i.test(before), `the summary says “${before}”`);
  // One was decided here, and the lantern is on record.
  must(/2 of \d+ decided/i.test(before), `the summary says “${before}”`);
  await tabTo(page, row.locator("summary"), "the row of the open shelves");
  await page.keyboard.press("Enter");
  await cross(page, row.getByRole("group", { name: "What you say to it" }), /^Rejected/);
  await page.waitForFunction(() => /3 of \d+ decided/i.test(document.querySelector("#running [role=status]").textContent), null, { timeout: 5000 });
  must((await drawn()) !== before, "the sums do not change with the choice");
  await isSound(page, `the sheet for signature at ${size.width} px`);
  await tabTo(page, page.getByLabel("Your name, typed"), "the name");
  await page.keyboard.press("Enter");
  await page.getByText("Type your name to sign.").waitFor();
  await page.keyboard.type("Odile Quillarn");
  await draws(page);
  await page.reload();
  same(await page.getByLabel("Your name, typed").inputValue(), "Odile Quillarn", "the typed name after the page was opened again");
  await tabTo(page, page.getByRole("button", { name: "Sign these 2 decisions" }), "the button to sign");
  await page.keyboard.press("Enter");
  await page.getByText(/Signed by Odile Quillarn/).waitFor();
  same(await page.evaluate(() => document.activeElement.id), "handing-title", "where the focus goes once it is signed");
  await isSound(page, `the signed sheet at ${size.width} px`);
}

async function handsOver(page, faults, size) {
  await page.getByRole("button", { name: "Send to the office" }).click();
  const told = page.getByRole("alert").filter({ hasText: "Nothing is lost." });
  await told.waitFor();
  must((await told.innerText()).includes("It did not get there."), "a failed post does not say so");
  must(faults.some((fault) => fault.startsWith("request") && fault.includes("book.example")), "nothing was posted");
  const others = faults.filter((fault) => !ofThePost(fault));
  same(others, [], "besides the post");
  faults.length = 0;
  const [first, again] = [await download(page), await download(page)];
  same(first.text, again.text, "the same response handed over twice");
  must(/^bookmatch-[0-9a-f]{8}-issue-1-odile\.json$/.test(first.name), first.name);
  const { mac, ...response } = JSON.parse(first.text), bare = first.text.replace(`"mac":"${mac}",`, "");
  same(createHmac("sha256", Buffer.from(KEY, "base64url")).update(bare).digest("hex"), mac, "the code under the private link's key");
  same(Object.keys(response), Object.keys(response).sort(), "the order of names in canonical JSON");
  same([response.format, response.who, response.signed.name], ["bookmatch response 1", "odile", "Odile Quillarn"], "the response");
  must(/^M\d+ \d+(L\d+ \d+)+$/.test(response.signed.drawing), `the drawing is ${response.signed.drawing}`);
  same(response.items.map(({ item, decision, note }) => [item, decision, note]), [["open-shelves", "rejected", undefined], ["range", "approved as noted", HOSTILE]], "its items");
  must(response.items.every(({ mark }) => /^[0-9a-f]{64}$/.test(mark)) && response.items[1].option, "a mark or an option is missing");
  must((await page.locator(".past li").count()) === 2, "the page does not say what was handed over");
  await page.reload();
  must((await page.locator(".past li").first().innerText()).includes("saved as a file"), "what was handed over is forgotten");
  await isSound(page, `the sheet after handing over at ${size.width} px`);
  const email = await page.getByRole("link", { name: "Write an e-mail" }).getAttribute("href");
  must(/^mailto:[^?]+\?subject=[^&]+&body=[^&]+$/.test(email), email);
}

async function changesItsMind(page, go) {
  await go("items/kitchen/range.html");
  await page.getByRole("radio", { name: /^Rejected/ }).check();
  await go("sign.html");
  await page.getByText("You changed a decision after you had signed.").waitFor();
  must((await page.getByRole("button", { name: "Save the file" }).count()) === 0, "what no longer holds can still be handed over");
  // The book was published again meanwhile, with another mark.
  await page.evaluate(() => {
    const name = Object.keys(localStorage).find((name) => /^bookmatch \w{32} 1 odile$/.test(name)), kept = JSON.parse(localStorage.getItem(name));
    kept.items["kitchen/range"].mark = "0".repeat(64);
    localStorage.setItem(name, JSON.stringify(kept));
  });
  await page.reload();
  await page.getByText("Changed since you decided").waitFor();
  must((await page.locator("#deciding .caution").innerText()).includes("Range, K-04"), "the dropped decision is not named");
  await go("items/kitchen/range.html");
  must((await page.locator("#deciding-one input:checked").count()) === 0, "a decision of another mark still stands");
}

async function withoutALink(page, go) {
  await page.evaluate(() => localStorage.clear());
  await seesThePartner(page, go);
  must((await page.getByRole("group", { name: "What you say to it" }).count()) === 0, "somebody decides who has not said who it is");
  await page.getByRole("radio", { name: "Samir Ostrevy" }).check();
  await page.getByText("recorded as unsigned").waitFor();
  await page.getByRole("radio", { name: /^Approved Order/ }).check();
  await go("sign.html");
  await page.getByLabel("Your name, typed").fill("Samir Ostrevy");
  await page.getByRole("button", { name: "Sign this decision" }).click();
  const { text } = await download(page);
  const response = JSON.parse(text);
  same([response.who, response.mac, response.items.length, response.signed.drawing], ["samir", undefined, 1, ""], "an unsigned response");
  await shares(page, text);
  await posts(page, text);
}

/** What the other one decided, with a note that is words and nothing else. */
async function seesThePartner(page, go) {
  await go("items/hall/lantern.html");
  const said = (await page.locator("#deciding-one .said").innerText()).replace(/\s+/g, " ");
  must(said.includes("Samir Ostrevy: Approved; recorded “</script><b>ours</b>”"), said);
  must(!(await page.content()).includes("on the telephone"), "what the designer wrote of how it was given");
  // Somebody answered for the sink in his name, and nobody has confirmed it.
  await go("items/kitchen/sink.html");
  must((await page.locator("#deciding-one .said").count()) === 0 && !/\bours\b/.test(await page.content()), "what nobody confirmed is shown");
}

/** A device that shares plain text alone is given the same file as that. */
async function shares(page, text) {
  await page.evaluate(() => {
    navigator.canShare = ({ files }) => files.every((file) => file.type === "text/plain");
    navigator.share = async ({ files: [file] }) => { window.shared = [file.name, await file.text()]; };
  });
  await page.getByRole("radio", { name: "Samir Ostrevy" }).first().dispatchEvent("change");
  await page.getByRole("button", { name: "Share" }).click();
  await page.locator(".past li", { hasText: "shared" }).waitFor();
  const [name, shared] = await page.evaluate(() => window.shared);
  must(name.endsWith("-samir.json.txt"), name);
  same(shared, text, "what is shared");
}

/** What the office's address answers is told, be it yes or no. */
async function posts(page, text) {
  const answer = async (status, body) => {
    await page.unrouteAll();
    await page.route("https://book.example/responses", (route) => {
      same([route.request().method(), route.request().postData()], ["POST", text], "what is posted");
      return route.fulfill({ status, headers: { "access-control-allow-origin": "*" }, json: body });
    });
    await page.getByRole("button", { name: "Send to the office" }).click();
  };
  await answer(400, { outcome: "refused", why: "the book is not known here." });
  await page.getByRole("alert").filter({ hasText: "the book is not known here. Nothing is lost." }).waitFor();
  await answer(200, { outcome: "recorded as unsigned" });
  await page.locator(".past li", { hasText: "sent to the office: recorded as unsigned" }).waitFor();
  await page.getByText("It has arrived at the office: recorded as unsigned").waitFor();
}

await onEachDevice(site, async ({ page, go, size, faults }) => {
  await takesTheLink(page, go);
  await decidesAnItem(page, go, size);
  await signs(page, go, size);
  await handsOver(page, faults, size);
  await changesItsMind(page, go);
  await withoutALink(page, go);
  faults.splice(0, faults.length, ...faults.filter((fault) => !ofThePost(fault) && !fault.includes("status of 400")));
});
