// Starts the browser: no network, no sandbox (tests may run as root), nothing in the background.
import { chromium } from "playwright-core";

const FLAGS = [
  "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
  "--disable-background-networking", "--disable-component-update", "--disable-sync",
  "--disable-dev-shm-usage",
];

/** Widths that every page is looked at: a telephone, a tablet, a desk. */
export const WIDTHS = [
  { width: 390, height: 844 },
  { width: 820, height: 1180 },
  { width: 1440, height: 900 },
];

/** The narrowest telephone, and a page that a desk's reader has enlarged fourfold (WCAG 2.2, 1.4.10: 320 CSS pixels). */
export const NARROWEST = { width: 320, height: 640 };

/** The text of an A4 sheet: 184 mm wide at 96 pixels an inch, the narrower of the two papers. */
export const PAPER = { width: 695, height: 983 };

/** `reach` is the one address that the browser may reach, such as `127.0.0.1`; none if left out. */
export function launch(reach) {
  const executablePath = process.env.CHROMIUM || "/usr/bin/chromium";
  const rules = `--host-resolver-rules=MAP * ~NOTFOUND${reach ? `, EXCLUDE ${reach}` : ""}`;
  return chromium.launch({ executablePath, args: [...FLAGS, rules] });
}

/** The browser, which finds one name on this machine and no other anywhere. */
export function chromiumAt(name) {
  const executablePath = process.env.CHROMIUM || "/usr/bin/chromium";
  return chromium.launch({ executablePath, args: [...FLAGS, `--host-resolver-rules=MAP ${name} 127.0.0.1, MAP * ~NOTFOUND, EXCLUDE 127.0.0.1`] });
}

/** A page in a context of its own that cannot reach a network. */
export async function newPage(browser, size = WIDTHS[0], options = {}) {
  const context = await browser.newContext({ viewport: size, offline: true, reducedMotion: "reduce", ...options });
  return context.newPage();
}
