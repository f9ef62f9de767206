// SPDX-License-Identifier: MIT
// Chromium without a window, spoken to in its own debugging protocol over a pipe: no package is needed, and Node 18
// will do. Pages have what the tests use and no more.
import { spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, writeFileSync } from "node:fs";
import { join } from "node:path";

const FLAGS = ["--headless", "--remote-debugging-pipe", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage",
  "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
  "--disable-extensions", "--disable-backgrounding-occluded-windows", "--disable-renderer-backgrounding",
  "--disable-background-timer-throttling", "--force-device-scale-factor=1", "--font-render-hinting=none"];
const PATIENCE = 60000; // ms for one answer
const KEYS = { Tab: 9, Enter: 13, Space: 32, End: 35, Home: 36, ArrowLeft: 37, ArrowUp: 38, ArrowRight: 39, ArrowDown: 40 };
const TEXT = { Enter: "\r", Space: " " };

/* One connection: commands with answers, and events by session. */
class Wire {
  constructor(process) {
    this.out = process.stdio[3];
    this.waiting = new Map();
    this.listeners = new Map();
    this.last = 0;
    let rest = "";
    process.stdio[4].setEncoding("utf8");
    process.stdio[4].on("data", (text) => {
      const parts = (rest + text).split("\0");
      rest = parts.pop();
      for (const part of parts) this.take(JSON.parse(part));
    });
    process.on("exit", () => { for (const w of this.waiting.values()) w.reject(new Error("the browser ended")); });
    this.out.on("error", () => {}); // told by "exit"
  }

  take(message) {
    if (message.id === undefined) {
      this.listeners.get(message.sessionId)?.(message.method, message.params);
      return;
    }
    const waiting = this.waiting.get(message.id);
    this.waiting.delete(message.id);
    if (message.error) waiting?.reject(new Error(`${waiting.method}: ${message.error.message}`));
    else waiting?.resolve(message.result);
  }

  send(method, params = {}, sessionId = undefined) {
    const id = ++this.last;
    return new Promise((resolve, reject) => {
      const timer = setTimeout(() => { this.waiting.delete(id); reject(new Error(`${method}: no answer`)); }, PATIENCE);
      const settle = (how) => (value) => { clearTimeout(timer); how(value); };
      this.waiting.set(id, { method, resolve: settle(resolve), reject: settle(reject) });
      this.out.write(`${JSON.stringify({ id, method, params, sessionId })}\0`);
    });
  }
}

class Page {
  constructor(wire, session, target) {
    this.wire = wire;
    this.session = session;
    this.target = target;
    this.messages = []; // of the console, and errors of scripts
    this.requests = []; // what the page asked for
    this.loaded = () => {};
    wire.listeners.set(session, (method, params) => this.event(method, params));
  }

  event(method, params) {
    if (method === "Page.loadEventFired") this.loaded();
    else if (method === "Network.requestWillBeSent") this.requests.push(params.request.url);
    else if (method === "Log.entryAdded") this.messages.push(params.entry.text);
    else if (method === "Runtime.exceptionThrown") this.messages.push(params.exceptionDetails.exception?.description || params.exceptionDetails.text);
    else if (method === "Runtime.consoleAPICalled") this.messages.push(params.args.map((a) => a.value ?? a.description).join(" "));
  }

  send(method, params) { return this.wire.send(method, params, this.session); }

  async prepare() {
    for (const domain of ["Page", "Runtime", "Network", "Log"]) await this.send(`${domain}.enable`);
    await this.send("Emulation.setFocusEmulationEnabled", { enabled: true });
    return this;
  }

  async goto(url) {
    const loaded = new Promise((resolve) => { this.loaded = resolve; });
    const { errorText } = await this.send("Page.navigate", { url });
    if (errorText) throw new Error(`${url}: ${errorText}`);
    await loaded;
  }

  /* What a function, sent as its text, gives in the page; or an expression. */
  async evaluate(what, argument) {
    const expression = typeof what === "function" ? `(${what})(${JSON.stringify(argument)})` : what;
    const { result, exceptionDetails } = await this.send("Runtime.evaluate", { expression, returnByValue: true, awaitPromise: true });
    if (exceptionDetails) throw new Error(exceptionDetails.exception?.description || exceptionDetails.text);
    return result.value;
  }

  setViewportSize(size) { return this.send("Emulation.setDeviceMetricsOverride", { ...size, deviceScaleFactor: 1, mobile: false }); }

  /* Whether the page's own scripts run from the next load on. */
  allowScripts(allowed) { return this.send("Emulation.setScriptExecutionDisabled", { value: !allowed }); }

  emulate(media, features = []) { return this.send("Emulation.setEmulatedMedia", { media, features }); }

  /* The family of letters that the browser has drawn most of an element with. */
  async familyOf(selector) {
    await this.send("DOM.enable");
    await this.send("CSS.enable");
    const { root } = await this.send("DOM.getDocument", { depth: 0 });
    const { nodeId } = await this.send("DOM.querySelector", { nodeId: root.nodeId, selector });
    const { fonts } = await this.send("CSS.getPlatformFontsForNode", { nodeId });
    return fonts.sort((a, b) => b.glyphCount - a.glyphCount)[0]?.familyName;
  }

  textContent(selector) { return this.evaluate((s) => document.querySelector(s).textContent, selector); }

  getAttribute(selector, name) { return this.evaluate(([s, n]) => document.querySelector(s).getAttribute(n), [selector, name]); }

  focus(selector) { return this.evaluate((s) => { document.querySelector(s).focus(); }, selector); }

  /* A press of the mouse where the element is seen; an error where something lies over it. */
  async click(selector) {
    const at = await this.evaluate((s) => {
      const e = document.querySelector(s);
      if (!e) return null;
      e.scrollIntoView({ block: "center", behavior: "instant" });
      const r = e.getBoundingClientRect(), x = r.left + r.width / 2, y = r.top + r.height / 2;
      return e.contains(document.elementFromPoint(x, y)) ? { x, y } : null;
    }, selector);
    if (!at) throw new Error(`${selector} cannot be clicked: it is not there, or something lies over it`);
    for (const type of ["mouseMoved", "mousePressed", "mouseReleased"])
      await this.send("Input.dispatchMouseEvent", { type, ...at, button: type === "mouseMoved" ? "none" : "left", clickCount: type === "mouseMoved" ? 0 : 1 });
  }

  /* The mouse, from one place to another with its button down, in a few steps. */
  async drag(from, to) {
    const send = (type, at, buttons) => this.send("Input.dispatchMouseEvent", { type, ...at, button: buttons || type === "mouseReleased" ? "left" : "none", buttons, clickCount: type === "mouseMoved" ? 0 : 1 });
    await send("mouseMoved", from, 0);
    await send("mousePressed", from, 1);
    for (let i = 1; i <= 5; i++) await send("mouseMoved", { x: from.x + ((to.x - from.x) * i) / 5, y: from.y + ((to.y - from.y) * i) / 5 }, 1);
    await send("mouseReleased", to, 0);
  }

  async press(key) {
    const event = { key: TEXT[key] === " " ? " " : key, code: key, windowsVirtualKeyCode: KEYS[key] };
    await this.send("Input.dispatchKeyEvent", { type: TEXT[key] ? "keyDown" : "rawKeyDown", text: TEXT[key], ...event });
    await this.send("Input.dispatchKeyEvent", { type: "keyUp", ...event });
  }

  async pdf() {
    const { data } = await this.send("Page.printToPDF", { preferCSSPageSize: true, printBackground: true });
    return Buffer.from(data, "base64");
  }

  close() { return this.wire.send("Target.closeTarget", { targetId: this.target }); }
}

/* Settings under which every family of letters that a page asks for is this one; what it has not comes from others. */
export function fontsOf(family, dir, folders = ["/usr/share/fonts", "/usr/local/share/fonts"]) {
  mkdirSync(dir, { recursive: true });
  const file = join(dir, "fonts.conf");
  writeFileSync(file, `<?xml version="1.0"?>\n<!DOCTYPE fontconfig SYSTEM "fonts.dtd">\n<fontconfig>
  ${folders.map((f) => `<dir>${f}</dir>`).join("")}<cachedir>${dir}/cache</cachedir>
  <match target="pattern"><edit name="family" mode="assign" binding="strong"><string>${family}</string></edit></match>\n</fontconfig>\n`);
  return file;
}

/* Starts a browser of its own: with a profile below `dir`, and with the given file of font settings if there is one. */
export async function launch(executable, dir, fonts = undefined) {
  const profile = mkdtempSync(join(dir, "profile-"));
  const env = { ...process.env, HOME: profile, ...(fonts ? { FONTCONFIG_FILE: fonts } : {}) };
  const child = spawn(executable, [...FLAGS, `--user-data-dir=${profile}`, "about:blank"],
    { env, detached: true, stdio: ["ignore", "ignore", "ignore", "pipe", "pipe"] });
  const end = () => { try { process.kill(-child.pid, "SIGKILL"); } catch { /* it has ended */ } };
  const gone = new Promise((resolve) => { child.on("exit", resolve); child.on("error", resolve); });
  process.on("exit", end);
  const wire = new Wire(child);
  await wire.send("Browser.getVersion");
  return {
    async newPage() {
      const { targetId } = await wire.send("Target.createTarget", { url: "about:blank" });
      const { sessionId } = await wire.send("Target.attachToTarget", { targetId, flatten: true });
      return new Page(wire, sessionId, targetId).prepare();
    },
    async close() {
      await wire.send("Browser.close").catch(() => {});
      const timer = setTimeout(end, 5000);
      await gone;
      clearTimeout(timer);
      end(); // helpers that outlive it
    },
  };
}
