// node cautions.mjs PAGE…: every caution of each page is seen, by its computed style and its place, whatever the theme says.
import path from "node:path";
import { pathToFileURL } from "node:url";
import { launch, newPage } from "./launch.mjs";

const browser = await launch();
try {
  for (const file of process.argv.slice(2)) {
    const page = await newPage(browser);
    await page.goto(pathToFileURL(path.resolve(file)).href);
    const found = await page.evaluate(() => [...document.querySelectorAll(".caution:not(#older), .caution:not(#older) p")].map((one) => {
      const style = getComputedStyle(one), box = one.getBoundingClientRect();
      const seen = style.display !== "none" && style.visibility === "visible" && style.opacity === "1" && style.clipPath === "none" && style.transform === "none" && box.width > 100 && box.height > 10 && box.left >= 0;
      return { seen, what: `${one.tagName} ${style.display} ${style.visibility} ${style.opacity} ${Math.round(box.width)}x${Math.round(box.height)}: ${one.textContent.trim().slice(0, 60)}` };
    }));
    if (!found.length) throw new Error(`${file} has no caution`);
    const hidden = found.filter((one) => !one.seen);
    if (hidden.length) throw new Error(`${file} hides ${hidden.map((one) => one.what).join("; ")}`);
    await page.close();
  }
  console.log(`${process.argv.length - 2} pages`);
} finally {
  await browser.close();
}
