// Copies one part alone to an awkward path and sees that it still works there.
import { cp, rm } from "node:fs/promises";
import path from "node:path";
import { inTurns, pagesIn, partsOf, urlOf } from "./folder.mjs";
import * as inPage from "./in_page.mjs";
import { newPage, WIDTHS } from "./launch.mjs";
import { listen, open } from "./visit.mjs";

const AWKWARD = "a stick, 100% full & #1";

/** `known` tells a fault that the page already has where it was published. */
export async function carried(browser, folder, scratch, lanes, known, fault) {
  for (const part of partsOf(folder)) {
    const there = path.join(scratch, AWKWARD, part);
    await cp(path.join(folder, part), there, { recursive: true });
    await inTurns(pagesIn(there), lanes, async () => {
      const page = await newPage(browser, WIDTHS[1]);
      const ear = listen(page, there);
      return async (name) => {
        const say = (check, text) => {
          const original = path.posix.join(part, name);
          if (!known(original, check)) fault(original, WIDTHS[1].width, "carried", `${check}: ${text}`);
        };
        ear.report = say;
        await open(page, urlOf(there, name));
        (await page.evaluate(inPage.pictures)).broken.forEach((text) => say("image", text));
        (await page.evaluate(inPage.fonts)).forEach((text) => say("request", text));
      };
    });
    await rm(there, { recursive: true });
  }
}
