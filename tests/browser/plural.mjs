// The plural form that the pages' scripts give counts, by the rules of a language: `node plural.mjs RULES COUNTS`, both as JSON.
import { readFileSync } from "node:fs";
import vm from "node:vm";

const [rules, counts] = process.argv.slice(2).map((json) => JSON.parse(json));
const words = JSON.stringify({ plural: rules });
const document = { documentElement: { lang: "qq" }, getElementById: (id) => (id === "words" ? { textContent: words } : null) };
const script = readFileSync(new URL("../../themes/standard/scripts/paper.js", import.meta.url), "utf8");
const forms = Object.fromEntries([...Object.keys(rules), "other"].map((form) => [form, form]));
const told = vm.runInNewContext(`${script}\ncounts.map((n) => Paper.fill(forms, { n }))`, { document, counts, forms });
console.log(JSON.stringify(told));
