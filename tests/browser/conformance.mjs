// Asks the Nu HTML checker about all pages, in one run.
import { execFile } from "node:child_process";
import { createRequire } from "node:module";
import path from "node:path";
import { promisify } from "node:util";
import { insideFolder } from "./folder.mjs";

const run = promisify(execFile);
const packageFile = createRequire(import.meta.url).resolve("vnu-jar/package.json");
const jar = path.join(path.dirname(packageFile), "build/dist/vnu.jar");

export async function conformance(folder, fault) {
  const options = ["--format", "json", "--exit-zero-always", "--stdout", "--skip-non-html", folder];
  const { stdout } = await run("java", ["-Xss8m", "-jar", jar, ...options], { maxBuffer: 1 << 28 });
  for (const message of JSON.parse(stdout).messages) {
    const page = message.url ? insideFolder(folder, message.url) : "";
    const word = message.subType ?? message.type;
    fault(page, null, "html", `line ${message.lastLine}: ${word}: ${message.message}`);
  }
}
