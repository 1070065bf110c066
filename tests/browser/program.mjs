// Runs the program on one book, and keeps its server at work while a test drives pages.
import { execFile, spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import path from "node:path";
import { createInterface } from "node:readline";
import { promisify } from "node:util";
import { must } from "./acts.mjs";

export class Program {
  /** `folder` is the book's, `site` where it is published, `port` where it is served. */
  constructor(binary, folder, site, port) {
    Object.assign(this, { binary, folder, site, port, log: [] });
    this.address = `http://127.0.0.1:${port}`;
  }

  /** Runs a command to its end; returns all that it said. */
  async run(command, args = [], code = 0) {
    const ran = await promisify(execFile)(this.binary, [command, ...args], { cwd: this.folder }).catch((error) => error);
    const said = `${ran.stdout}${ran.stderr}`;
    must((ran.code ?? 0) === code, `${command} ${args.join(" ")} ended with ${ran.code ?? 0}:\n${said}`);
    return said;
  }

  on(day) { return ["--today", day]; }

  async publish(day) { await this.run("publish", [...this.on(day), "--out", this.site]); }

  /** Serves what was published, until `stop`. */
  async host() {
    this.server = spawn(this.binary, ["host", "--site", this.site, "--address", `127.0.0.1:${this.port}`], { cwd: this.folder, stdio: ["ignore", "ignore", "pipe"] });
    const lines = createInterface({ input: this.server.stderr });
    const serves = new Promise((serves, fails) => {
      lines.on("line", (line) => { this.log.push(line); if (line.includes("serving at")) serves(); });
      this.server.once("exit", () => fails(new Error(`the server ended: ${this.log.join("\n")}`)));
    });
    await serves;
  }

  /** Ends the server as Ctrl-C does; it must end well. */
  async stop() {
    if (!this.server || this.server.exitCode !== null) return;
    const ended = new Promise((ended) => this.server.once("exit", ended));
    this.server.kill("SIGINT");
    must((await ended) === 0, "the server did not end well");
  }

  /** The facts on record, in their order. */
  facts() {
    const text = readFileSync(path.join(this.folder, "record/ledger.jsonl"), "utf8");
    return text.trimEnd().split("\n").map((line) => JSON.parse(line).fact);
  }

  /** What stands of each item, by its name, as `status` says it. */
  async stands(day) {
    const { stdout } = await promisify(execFile)(this.binary, ["status", "--format", "json", ...this.on(day)], { cwd: this.folder }).catch((error) => error);
    return Object.fromEntries(JSON.parse(stdout).approvals.items.map((one) => [one.item, one.standing]));
  }
}
