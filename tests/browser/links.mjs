// Where links lead: to a file that is there, inside the same part, and every page is led to.
import path from "node:path/posix";
import { insideFolder, isFile, partOf, partsOf } from "./folder.mjs";

/** Checks what every page points at. `visited` holds, for each page, `found` and `ids`. */
export function checkLinks(folder, visited, fault) {
  const parts = partsOf(folder);
  const leads = new Map();
  for (const [page, { found }] of visited) {
    const targets = new Set();
    leads.set(page, targets);
    for (const pointer of found) {
      const { target, wrong } = judge(folder, parts, visited, page, pointer);
      if (wrong) fault(page, null, wrong.check, `${pointer.kind} ${pointer.written} ${wrong.fault}`);
      if (target) targets.add(target);
    }
  }
  for (const part of parts) unreached(part, parts, leads, fault);
}

function judge(folder, parts, visited, page, { kind, url }) {
  const wrong = (check, text) => ({ wrong: { check, fault: text } });
  if (url === null) return wrong("link", "is no address");
  const { protocol, hash } = new URL(url);
  if (["data:", "mailto:", "tel:"].includes(protocol)) return {};
  if (["http:", "https:"].includes(protocol)) {
    return ["a", "area", "form"].includes(kind) ? {} : wrong("request", "is on another host");
  }
  const inside = insideFolder(folder, url);
  if (inside === null) return wrong("link", "leads out of the folder");
  if (!isFile(folder, inside)) return wrong("link", "leads nowhere");
  if (partOf(inside, parts) !== partOf(page, parts)) return wrong("link", "leads into another part, which may not be there");
  const id = decodeURIComponent(hash.slice(1));
  const ids = visited.get(inside)?.ids;
  if (id && id !== "top" && ids && !ids.includes(id)) return wrong("link", "leads to a place that the page does not have");
  return { target: inside };
}

/** Pages of a part that no path of links from its first page reaches. */
function unreached(part, parts, leads, fault) {
  const first = path.join(part, "index.html");
  if (!leads.has(first)) {
    fault(first, null, "link", "the part has no first page");
    return;
  }
  const reached = new Set([first]);
  for (const page of reached) leads.get(page)?.forEach((target) => reached.add(target));
  for (const page of leads.keys()) {
    if (partOf(page, parts) === part && !reached.has(page)) fault(page, null, "link", "no page leads here");
  }
}
