// Two other engines, by the protocols that they bring: WebKit's WebDriver (W3C, over HTTP) and Gecko's Marionette
// (the same commands over a socket). Commands and results: W3C, WebDriver Level 2.
import { spawn } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { createServer, connect } from "node:net";
import os from "node:os";
import path from "node:path";
import { WIDTHS } from "./launch.mjs";

/** WebKit's small browser, which its driver starts: Debian keeps it in a folder a processor. */
const miniBrowser = () => readdirSync("/usr/lib").map((machine) => `/usr/lib/${machine}/webkit2gtk-4.1/MiniBrowser`).find(existsSync);
const ELEMENT = "element-6066-11e4-a52e-4f735466cecf";
const PATIENCE = 60_000;

const pause = (ms) => new Promise((over) => setTimeout(over, ms));

/** A port that nothing listens on just now. */
const freePort = () => new Promise((found) => {
  const server = createServer().listen(0, "127.0.0.1", () => {
    const { port } = server.address();
    server.close(() => found(port));
  });
});

/** Asks again until it is answered; a program that starts needs a while. */
async function until(ask, what) {
  for (const end = Date.now() + PATIENCE; ;) {
    try {
      const answer = await ask();
      if (answer) return answer;
    } catch (error) {
      if (Date.now() > end) throw new Error(`${what}: ${error.message}`);
    }
    if (Date.now() > end) throw new Error(`${what}: not within a minute`);
    await pause(100);
  }
}

/** One page of an engine; `send` carries one command of WebDriver. */
class Page {
  constructor(send) { this.send = send; }

  go(url) { return this.send("navigate", { url }); }
  url() { return this.send("url", {}); }

  /** Runs a function in the page; what it returns comes back as JSON has it. */
  async run(work, ...args) {
    const script = `try { return JSON.stringify([(${work})(...arguments)]); } catch (error) { return "thrown: " + error + error.stack; }`;
    const said = await this.send("run", { script, args });
    if (said.startsWith("thrown: ")) throw new Error(said);
    return JSON.parse(said)[0];
  }

  /** Runs a function in the page until it answers with something. */
  async until(work, ...args) {
    return until(() => this.run(work, ...args), `${work}`.slice(0, 160));
  }

  /** The one element that a function in the page finds. */
  async find(work, ...args) {
    const found = await until(() => this.send("run", { script: `return (${work})(...arguments) ?? null;`, args }), `${work}`);
    return found[ELEMENT];
  }

  async click(work, ...args) {
    const id = await this.find(work, ...args);
    await this.run((element) => { element.scrollIntoView({ block: "center" }); }, { [ELEMENT]: id });
    await this.send("click", { id });
  }

  async type(text, work, ...args) {
    await this.send("type", { id: await this.find(work, ...args), text });
  }
}

/** A window as wide as a telephone, and what stands in it. */
async function narrow(page) {
  const { width, height } = WIDTHS[0];
  await page.send("rect", { width, height });
  const inner = await page.run(() => innerWidth);
  if (inner !== width) await page.send("rect", { width: width + (width - inner), height });
  const now = await page.run(() => innerWidth);
  if (now !== width) throw new Error(`the window is ${now} pixels wide instead of ${width}`);
}

async function webkit(home) {
  // Its buttons would keep the window wider than a telephone.
  mkdirSync(path.join(home, ".config/gtk-3.0"), { recursive: true });
  writeFileSync(path.join(home, ".config/gtk-3.0/gtk.css"), "button, entry, toolbar, headerbar, image { min-width: 0; padding: 0; margin: 0; border: 0; }\n");
  const [display, port] = [`:${100 + (process.pid % 800)}`, await freePort()];
  const screen = spawn("Xvfb", [display, "-screen", "0", "1280x1024x24", "-nolisten", "tcp"], { stdio: "ignore" });
  const driver = spawn("WebKitWebDriver", [`--port=${port}`, "--host=127.0.0.1"], {
    stdio: "ignore", env: { ...process.env, DISPLAY: display, HOME: home, XDG_RUNTIME_DIR: home, GDK_BACKEND: "x11", LIBGL_ALWAYS_SOFTWARE: "1", WEBKIT_DISABLE_COMPOSITING_MODE: "1", NO_AT_BRIDGE: "1" },
  });
  const stop = () => { driver.kill(); screen.kill(); };
  const ask = async (method, where, body) => {
    const answer = await fetch(`http://127.0.0.1:${port}${where}`, { method, body: body && JSON.stringify(body) });
    const { value } = await answer.json();
    if (!answer.ok) throw new Error(`${value.error}: ${value.message}`);
    return value;
  };
  try {
    await until(() => ask("GET", "/status"), "WebKit's driver starts");
    const binary = process.env.MINIBROWSER || miniBrowser();
    const wanted = { "webkitgtk:browserOptions": { binary, args: ["--automation"] } };
    const { sessionId, capabilities } = await ask("POST", "/session", { capabilities: { alwaysMatch: wanted } });
    const at = `/session/${sessionId}`;
    const commands = {
      navigate: (body) => ask("POST", `${at}/url`, body),
      url: () => ask("GET", `${at}/url`),
      run: (body) => ask("POST", `${at}/execute/sync`, body),
      click: ({ id }) => ask("POST", `${at}/element/${id}/click`, {}),
      type: ({ id, text }) => ask("POST", `${at}/element/${id}/value`, { text }),
      rect: (body) => ask("POST", `${at}/window/rect`, body),
      picture: () => ask("GET", `${at}/screenshot`),
    };
    // A driver whose browser hangs never answers.
    const end = async () => { await Promise.race([ask("DELETE", at).catch(() => {}), pause(5000)]); stop(); };
    return { name: `WebKit ${capabilities.browserVersion}`, page: new Page((name, body) => commands[name](body)), end };
  } catch (error) {
    stop();
    throw error;
  }
}

/** A socket that carries `length:JSON` either way; answers come in the order of their numbers. */
class Marionette {
  constructor(socket) {
    Object.assign(this, { socket, waits: new Map(), next: 1, heard: Buffer.alloc(0) });
    socket.on("data", (bytes) => this.hear(bytes));
    const gone = (error) => { for (const { fails } of this.waits.values()) fails(error ?? new Error("Gecko is gone")); };
    socket.on("error", gone).on("close", () => gone());
  }

  hear(bytes) {
    this.heard = Buffer.concat([this.heard, bytes]);
    for (;;) {
      const colon = this.heard.indexOf(":");
      const size = Number(this.heard.subarray(0, colon));
      if (colon < 0 || this.heard.length < colon + 1 + size) return;
      const said = JSON.parse(this.heard.subarray(colon + 1, colon + 1 + size));
      this.heard = this.heard.subarray(colon + 1 + size);
      if (!Array.isArray(said)) { this.greeted = true; continue; }
      const [, id, error, result] = said;
      const { answers, fails } = this.waits.get(id);
      this.waits.delete(id);
      if (error) fails(new Error(`${error.error}: ${error.message}`));
      else answers(result);
    }
  }

  ask(command, parameters = {}) {
    const id = this.next++, text = Buffer.from(JSON.stringify([0, id, command, parameters]));
    return new Promise((answers, fails) => {
      this.waits.set(id, { answers, fails });
      this.socket.write(Buffer.concat([Buffer.from(`${text.length}:`), text]));
    });
  }
}

async function gecko(home) {
  const port = await freePort();
  // Nothing is asked of its makers, and no window is held wider than it was told to be.
  mkdirSync(path.join(home, "chrome"));
  writeFileSync(path.join(home, "chrome/userChrome.css"), ":root, body, #navigator-toolbox, toolbar { min-width: 0 !important; }\n");
  const prefs = { "marionette.port": port, "browser.shell.checkDefaultBrowser": false, "app.update.enabled": false, "datareporting.policy.dataSubmissionEnabled": false,
    "toolkit.telemetry.enabled": false, "network.proxy.type": 0, "browser.startup.page": 0, "toolkit.legacyUserProfileCustomizations.stylesheets": true, "network.captive-portal-service.enabled": false, "network.connectivity-service.enabled": false };
  writeFileSync(path.join(home, "user.js"), Object.entries(prefs).map(([name, value]) => `user_pref(${JSON.stringify(name)}, ${JSON.stringify(value)});\n`).join(""));
  const { width, height } = WIDTHS[0];
  const program = spawn(process.env.FIREFOX || "firefox-esr", ["--headless", "--marionette", "--no-remote", "--profile", home, "--width", `${width}`, "--height", `${height}`], {
    stdio: "ignore", env: { ...process.env, HOME: home, MOZ_DISABLE_CONTENT_SANDBOX: "1" },
  });
  try {
    const line = await until(() => new Promise((opens, fails) => {
      const socket = connect(port, "127.0.0.1", () => opens(new Marionette(socket))).once("error", fails);
    }), "Gecko starts");
    await until(() => line.greeted, "Gecko greets");
    const { capabilities } = await line.ask("WebDriver:NewSession", { capabilities: { alwaysMatch: {} } });
    const commands = {
      navigate: (body) => line.ask("WebDriver:Navigate", body),
      url: () => line.ask("WebDriver:GetCurrentURL").then(({ value }) => value),
      run: (body) => line.ask("WebDriver:ExecuteScript", body).then(({ value }) => value),
      click: ({ id }) => line.ask("WebDriver:ElementClick", { id }),
      type: ({ id, text }) => line.ask("WebDriver:ElementSendKeys", { id, text }),
      rect: (body) => line.ask("WebDriver:SetWindowRect", body),
      picture: () => line.ask("WebDriver:TakeScreenshot", { full: false }).then(({ value }) => value),
    };
    const end = async () => {
      const ended = new Promise((over) => program.once("exit", over));
      await line.ask("Marionette:Quit", { flags: ["eForceQuit"] }).catch(() => program.kill());
      await ended;
    };
    return { name: `Gecko ${capabilities.browserVersion}`, page: new Page((name, body) => commands[name](body)), end };
  } catch (error) {
    program.kill();
    throw error;
  }
}

/** Starts each engine in turn, on a telephone's width and a device of its own, for `steps`. */
export async function inEachEngine(steps) {
  for (const start of [webkit, gecko]) {
    const home = mkdtempSync(path.join(os.tmpdir(), "engine-"));
    const engine = await start(home);
    try {
      await narrow(engine.page);
      await steps(engine.page, engine.name);
    } catch (error) {
      throw new Error(`${engine.name}: ${error.message}`, { cause: error });
    } finally {
      await engine.end();
      rmSync(home, { recursive: true, force: true, maxRetries: 5 });
    }
  }
}
