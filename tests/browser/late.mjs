// node late.mjs PROGRAM BOOK SITE PORT: Ada and Sven answer one book. An earlier word of Ada's comes in last, and overtakes
// nothing; Sven says two things on two devices, and nobody guesses which he said last.
import path from "node:path";
import { must, same } from "./acts.mjs";
import { decide, post, save, sign } from "./answers.mjs";
import { device } from "./device.mjs";
import { launch, WIDTHS } from "./launch.mjs";
import { Program } from "./program.mjs";

const [binary, book, site, port] = process.argv.slice(2);
const program = new Program(binary, book, site, port);
const DAY = program.on("2027-01-15");
const stands = async (item) => (await program.stands("2027-01-15"))[item];
const link = async (who) => (await program.run("invite", ["--for", who, "--address", `${program.address}/client`])).match(/http\S+/)[0];

async function opens(one, address, name) {
  await one.page.goto(address);
  await one.page.getByText(`Deciding as ${name}, by private link`).waitFor();
}

/** In a train, without a signal, Ada rejects the runner and saves that; she thinks better of it, approves it, and sends that. */
async function adaChangesHerMind(ada, address) {
  await opens(ada, address, "Ada Okonedo");
  await ada.context.setOffline(true);
  await decide(ada.page, "Runner", "Rejected");
  await sign(ada.page, "Ada Okonedo");
  const earlier = await save(ada.page, path.dirname(book));
  await ada.context.setOffline(false);
  await decide(ada.page, "Runner", "Approved");
  await sign(ada.page, "Ada Okonedo");
  await post(ada.page, "It has arrived at the office: recorded");
  return earlier;
}

/** Sven agrees, from home. */
async function svenAgrees(sven, address) {
  await opens(sven, address, "Sven Lindqvist");
  await decide(sven.page, "Runner", "Approved");
  await decide(sven.page, "Bench rug", "Approved");
  await sign(sven.page, "Sven Lindqvist");
  await post(sven.page, "It has arrived at the office: recorded");
  same(await stands("Runner"), "approved", "the runner, once both approved it");
}

/** What Ada saved first is mailed last. */
async function herEarlierWordComesLate(earlier) {
  must((await program.run("receive", [earlier])).includes(": recorded\n"), "what came late is not recorded");
  same(await stands("Runner"), "approved", "the runner, when an earlier word came late");
  const turns = program.facts().filter(({ is, who }) => is === "decided" && who === "ada").map(({ device, items }) => [device.turn, items[0].decision]);
  same(turns, [[2, "approved"], [1, "rejected"]], "Ada's words, in the order in which they came in");
}

/** Within minutes Sven rejects the bench rug on his telephone: no device, issue or clock tells whether before or after. */
async function svenSaysTwoThings(phone, address) {
  await opens(phone, address, "Sven Lindqvist");
  await decide(phone.page, "Bench rug", "Rejected");
  await sign(phone.page, "Sven Lindqvist");
  await post(phone.page, "It has arrived at the office: recorded");
  same(await stands("Bench rug"), "not agreed", "the bench rug");
  const review = await program.run("review", DAY, 1).catch(() => program.run("review", DAY));
  must(review.includes("Sven Lindqvist") && review.includes("[approve/conflict]"), `the review does not ask Sven:\n${review}`);
}


await program.run("issue", ["--for", "approval", ...DAY]);
await program.publish("2027-01-15");
await program.host();
const browser = await launch("127.0.0.1");
try {
  const [ada, sven, phone] = [WIDTHS[0], WIDTHS[2], WIDTHS[0]].map((size) => device(browser, size, program.address));
  const people = await Promise.all([ada, sven, phone]);
  const earlier = await adaChangesHerMind(people[0], await link("ada"));
  const his = await link("sven");
  await svenAgrees(people[1], his);
  await herEarlierWordComesLate(earlier);
  await svenSaysTwoThings(people[2], his);
  for (const one of people) same(one.faults.filter((fault) => !/ERR_(INTERNET_DISCONNECTED|FAILED)$/.test(fault)), [], "what the pages complain of");
} finally {
  await browser.close();
  await program.stop();
}
