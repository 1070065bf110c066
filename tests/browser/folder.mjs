// The published folder: its pages, the parts that must each work alone, and paths inside it.
import { existsSync, readdirSync, statSync } from "node:fs";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

/** Parts that are handed to different people, each without the others. */
const PARTS = ["client", "installer", "office"];

/** Every HTML file in a folder, as paths inside it. */
export function pagesIn(folder) {
  return readdirSync(folder, { recursive: true })
    .map((file) => file.split(path.sep).join("/"))
    .filter((file) => file.endsWith(".html"))
    .sort();
}

/** The parts of a folder that stand alone: `""` where the folder is one whole. */
export function partsOf(folder) {
  const parts = PARTS.filter((part) => existsSync(path.join(folder, part)));
  return parts.length ? parts : [""];
}

/** The part that a page belongs to. */
export function partOf(page, parts) {
  return parts.find((part) => part && page.startsWith(part + "/")) ?? "";
}

export function urlOf(folder, page) {
  return pathToFileURL(path.join(folder, page)).href;
}

/** Where an address leads: a path inside the folder, or null where it leaves it. */
export function insideFolder(folder, url) {
  const bare = new URL(url);
  bare.hash = bare.search = "";
  if (bare.protocol !== "file:") return null;
  const inside = path.relative(folder, fileURLToPath(bare)).split(path.sep).join("/");
  return inside.startsWith("..") ? null : inside;
}

export function isFile(folder, inside) {
  const place = path.join(folder, inside);
  return existsSync(place) && statSync(place).isFile();
}

/** Runs work over items, a few at a time. */
export async function inTurns(items, lanes, makeLane) {
  const queue = [...items];
  const lane = async () => {
    const work = await makeLane();
    for (let item = queue.shift(); item !== undefined; item = queue.shift()) await work(item);
  };
  await Promise.all(Array.from({ length: Math.min(lanes, items.length) }, lane));
}
