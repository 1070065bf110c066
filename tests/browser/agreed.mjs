// node agreed.mjs PROGRAM BOOK SITE PORT: Ada and Sven approve one book, through its server and by a file; then it changes.
import { readFile, writeFile } from "node:fs/promises";
import path from "node:path";
import { must, same } from "./acts.mjs";
import { decide, post, row, save, sign } from "./answers.mjs";
import { device, isInert } from "./device.mjs";
import { launch, WIDTHS } from "./launch.mjs";
import { fromADisk, keep, opensEarly } from "./older.mjs";
import { Program } from "./program.mjs";

const [binary, book, site, port] = process.argv.slice(2);
const program = new Program(binary, book, site, port);
const HOSTILE = "Feet first <img src=x onerror=alert(1)> </script><script>alert(2)</script> {{ 7 * 7 }}";
const KEPT = path.join(path.dirname(book), "kept");
const DAY = "2027-01-15", LATER = "2027-02-01";

const decided = () => program.facts().filter((fact) => fact.is === "decided");

/** Issues, invites, publishes and serves; returns each one's private link. */
async function begins() {
  await program.run("issue", ["--for", "approval", ...program.on(DAY)]);
  const invited = {};
  for (const who of ["ada", "sven"]) {
    const said = await program.run("invite", ["--for", who, "--address", `${program.address}/client`]);
    invited[who] = said.match(/http\S+/)[0];
  }
  await program.publish(DAY);
  await program.host();
  return invited;
}

async function adaApproves(ada, link) {
  await ada.page.goto(link);
  await ada.page.getByText("Deciding as Ada Okonedo, by private link").waitFor();
  // What is open is told beside what is agreed, and beside what an allowance has left.
  const running = async () => (await ada.page.locator("#running").innerText()).replace(/\s+/g, " ");
  const open = await running();
  must(open.includes("1 still open, $240.00 to $310.00 more"), `the sums say nothing of what is open: “${open}”`);
  must(open.includes("$300.00 left; with what is open $10.00 over to $60.00 left"), `the allowance says nothing of what is open: “${open}”`);
  await decide(ada.page, "Rug", "Approved", { option: /^A, Oak/ });
  const chosen = await running();
  must(chosen.includes("$240.00 of $300.00; $60.00 left") && !chosen.includes("open,") && !chosen.includes("with what is open"), `what is chosen still counts as open: “${chosen}”`);
  await decide(ada.page, "Runner", "Approved");
  await decide(ada.page, "Pulls", "Approved as noted", { note: HOSTILE });
  await decide(ada.page, "Mirror", "Rejected");
  await decide(ada.page, "Bench rug", "Approved");
  await sign(ada.page, "Ada Okonedo");
  await post(ada.page, "It has arrived at the office: recorded");
  const [fact] = decided();
  same([fact.who, fact.by, fact.signed.name, fact.items.length], ["ada", "private link", "Ada Okonedo", 5], "what is on record of Ada");
  await post(ada.page, "It has arrived at the office: already recorded");
  same(decided().length, 1, "the facts of one response that was sent twice");
}

async function svenIsOffline(sven, link) {
  await sven.page.goto(link);
  await sven.page.getByText("Deciding as Sven Lindqvist, by private link").waitFor();
  await sven.context.setOffline(true);
  await decide(sven.page, "Rug", "Approved", { option: /^B, Ash/ });
  await decide(sven.page, "Runner", "Approved");
  await sven.page.close();
  // That a page opens again without its server is tried in `evening.mjs`; what was decided needs nothing at all.
  await sven.context.setOffline(false);
  await sven.open(new URL("sign.html", link).href);
  await sven.page.getByText("2 of 5 decided").first().waitFor();
  await sven.context.setOffline(true);
  await decide(sven.page, "Pulls", "Approved");
  await decide(sven.page, "Bench rug", "Approved");
  await sign(sven.page, "Sven Lindqvist");
  await post(sven.page, "It did not get there. Nothing is lost.");
  same(sven.faults.splice(0).filter((fault) => !/ERR_(INTERNET_DISCONNECTED|FAILED)$/.test(fault)), [], "what Sven's page complains of without a signal");
  const file = await save(sven.page, path.dirname(book));
  same(decided().length, 1, "what is on record while Sven's file is his alone");
  return file;
}

async function bothWaysAreOne(sven, file) {
  const said = await program.run("receive", [file]);
  must(said.includes(": recorded\n"), said);
  must((await program.run("receive", [file])).includes(": already recorded\n"), "the same file twice");
  await sven.context.setOffline(false);
  await post(sven.page, "It has arrived at the office: already recorded");
  same(decided().map(({ who, by }) => [who, by]), [["ada", "private link"], ["sven", "private link"]], "the facts of all that");
  // Whoever has the file, and changes a word in it, has nothing.
  const altered = path.join(path.dirname(book), "altered.json");
  await writeFile(altered, (await readFile(file, "utf8")).replace('"approved"', '"rejected"'));
  must((await program.run("receive", [altered], 1)).includes("it was not made with the key of `sven`"), "an altered file is taken");
}

/** What an item's page says of it under its name. */
const head = async (page) => (await page.locator(".head .state").first().innerText()).trim();

/** Opens an item's page until it says `words`: what is published again is served within seconds. */
async function until(page, item, words) {
  for (let tries = 0; tries < 40; tries++) {
    await page.goto(`${program.address}/client/items/${item}.html`);
    if ((await head(page)) === words) return;
    await new Promise((rest) => setTimeout(rest, 500));
  }
  throw new Error(`${item} never says “${words}”, but “${await head(page)}”`);
}

async function whatStands(ada) {
  const stands = { Rug: "not agreed", Runner: "approved", Pulls: "approved as noted", Mirror: "rejected", "Bench rug": "approved" };
  same(await program.stands(DAY), stands, "what stands by `status`");
  await program.publish(DAY);
  const shown = { "kitchen/rug": "Not agreed yet", "kitchen/runner": "Approved", "kitchen/pulls": "Approved as noted", "hall/mirror": "Rejected by Ada Okonedo", "hall/bench-rug": "Approved" };
  for (const [item, words] of Object.entries(shown)) await until(ada.page, item, words);
}

/** The designer changes the runner, which both had signed; Ada has had the old page open all the while. */
async function aChangeAsksAgain(ada, sven) {
  await ada.open(`${program.address}/client/sign.html`);
  await ada.page.getByText("5 of 5 decided").first().waitFor();
  const running = (await ada.page.locator("#running").innerText()).replace(/\s+/g, " ");
  must(/Sven Lindqvist 4 of 5 decided You differ: Rug, K-01\./i.test(running), `the summary says “${running}”`);
  const laterOn = await opensEarly(sven, program.address);
  await keep(site, KEPT);
  const choices = path.join(book, "rooms/kitchen/choices.yaml");
  await writeFile(choices, (await readFile(choices, "utf8")).replace("finish: sand", "finish: rust"));
  const review = await program.run("review", program.on(LATER), 0);
  must(review.includes("[approve/stale]") && review.includes("`Runner` changed since Ada Okonedo and Sven Lindqvist approved it in issue 1: finish from sand to rust"), review);
  same((await program.stands(LATER)).Runner, "changed since signed", "the runner");
  await program.run("issue", ["--for", "approval", ...program.on(LATER)]);
  await program.publish(LATER);
  await until(sven.page, "kitchen/runner", "Changed since Ada Okonedo and Sven Lindqvist signed");
  const told = (await sven.page.locator(".rev li").innerText()).replace(/\s+/g, " ");
  must(told.includes("Finish: was sand is now rust"), `the page tells the change as “${told}”`);
  await laterOn();
  await fromADisk(sven, KEPT, site);
}

/** What is decided on the older page is recorded as far as its marks hold. */
async function theOlderPageAnswers(ada) {
  must(!(await ada.page.locator("#older").isVisible()), "the page knows already what its response is to tell");
  await decide(ada.page, "Pulls", "Approved");
  await sign(ada.page, "Ada Okonedo");
  await post(ada.page, "It has arrived at the office: recorded");
  await ada.page.getByText("Not taken, for it changed meanwhile: Runner, K-02.").waitFor();
  await ada.page.getByText("This page is of issue 1. Issue 2 stands now.").waitFor();
  const fact = decided().at(-1);
  same([fact.issue, fact.items.length, fact.refused.map(({ item }) => item)], [1, 4, ["runner"]], "the answer to the older issue");
  const stands = await program.stands(LATER);
  same([stands.Pulls, stands.Runner], ["approved", "changed since signed"], "what stands after it");
}

/** Asked anew, both approve, and the book agrees. */
async function bothAreAskedAgain(ada, sven) {
  for (const [one, name, stands] of [[ada, "Ada Okonedo", 4], [sven, "Sven Lindqvist", 3]]) {
    await one.page.goto(`${program.address}/client/sign.html`);
    await one.page.getByText(`Deciding as ${name}, by private link`).waitFor();
    // What is on record and holds is not asked a second time.
    await one.page.getByText(`${stands} of 5 decided`).first().waitFor();
    same((await row(one.page, "Bench rug").locator(".shown").innerText()).trim(), "Approved; recorded", `the bench rug for ${name}`);
    await decide(one.page, "Runner", "Approved");
    await decide(one.page, "Rug", "Approved", { option: /^A, Oak/ });
    await sign(one.page, name);
    await post(one.page, "It has arrived at the office: recorded");
  }
  const stands = await program.stands(LATER);
  same([stands.Runner, stands.Rug, stands.Mirror], ["approved", "approved", "rejected"], "what stands at last");
  must(!(await program.run("review", program.on(LATER))).includes("ledger"), "the ledger is not whole");
}

const browser = await launch("127.0.0.1");
try {
  const links = await begins();
  const [ada, sven] = [await device(browser, WIDTHS[2], program.address), await device(browser, WIDTHS[0], program.address)];
  await adaApproves(ada, links.ada);
  await bothWaysAreOne(sven, await svenIsOffline(sven, links.sven));
  await whatStands(ada);
  await isInert(browser, site, "Feet first <img src=x onerror=alert(1)>");
  await aChangeAsksAgain(ada, sven);
  await theOlderPageAnswers(ada);
  await bothAreAskedAgain(ada, sven);
  for (const one of [ada, sven]) same(one.faults, [], "what the pages complain of");
} finally {
  await browser.close();
  await program.stop();
}
