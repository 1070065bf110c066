// node check.mjs FOLDER: checks every page of a published folder and prints what is wrong as JSON.
import { mkdtemp, rm } from "node:fs/promises";
import os from "node:os";
import path from "node:path";
import { carried } from "./carried.mjs";
import { conformance } from "./conformance.mjs";
import { inTurns, pagesIn } from "./folder.mjs";
import { launch, newPage } from "./launch.mjs";
import { checkLinks } from "./links.mjs";
import { print } from "./paper.mjs";
import { listen, visit, withoutScripts } from "./visit.mjs";

/** Every check, by the name that its faults carry. Each has a faulty page that proves it. */
const CHECKS = [
  "accessibility", "carried", "console", "html", "image", "image-alt", "image-lazy", "image-size", "link",
  "no-script", "overlaid", "paper", "request", "sideways-scroll", "small-text", "viewport",
];
const LANES = 3;

if (process.argv[2] === "--checks") {
  console.log(JSON.stringify(CHECKS));
} else {
  const folder = path.resolve(process.argv[2]);
  const scratch = await mkdtemp(path.join(os.tmpdir(), "pages-"));
  try {
    console.log(JSON.stringify(await check(folder, scratch)));
  } finally {
    await rm(scratch, { recursive: true });
  }
}

async function check(folder, scratch) {
  const pages = pagesIn(folder);
  const faults = new Map();
  const fault = (page, width, check, text) => {
    if (!CHECKS.includes(check)) throw new Error(`the check ${check} is not in the list`);
    faults.set(JSON.stringify([page, width, check, text]), { page, width, check, fault: text });
  };
  const known = (page, check) => [...faults.values()].some((one) => one.page === page && one.check === check);
  const conforms = conformance(folder, fault);
  const browser = await launch();
  try {
    const visited = await visitAll(browser, folder, pages, scratch, fault);
    checkLinks(folder, visited, fault);
    await carried(browser, folder, scratch, LANES, known, fault);
  } finally {
    await browser.close();
  }
  await conforms;
  return { pages, faults: [...faults.values()].sort((one, other) => (one.page < other.page ? -1 : 1)) };
}

async function visitAll(browser, folder, pages, scratch, fault) {
  const visited = new Map();
  await inTurns(pages, LANES, async () => {
    const page = await newPage(browser);
    const plain = await newPage(browser, undefined, { javaScriptEnabled: false });
    const [ear, plainEar] = [listen(page, folder), listen(plain, folder)];
    return async (name) => {
      const seen = await visit(page, ear, folder, name, fault);
      visited.set(name, seen);
      await print(page, ear, name, scratch, fault);
      ear.report = null;
      await withoutScripts(plain, plainEar, folder, name, seen.reading, fault);
    };
  });
  return visited;
}
