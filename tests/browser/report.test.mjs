// SPDX-License-Identifier: MIT
// What a customer does with the page: opens it, presses buttons, moves sliders, prints it; and what must
// not happen. Run by report.sh.
import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fontsOf, launch } from "./chromium.mjs";
import { NARROW, WIDE, installed, textsOf } from "./letters.mjs";

const { GIVEWAY, SOURCE, TMPDIR, CHROMIUM, AXE_CORE } = process.env;
const AXE = AXE_CORE ? readFileSync(AXE_CORE, "utf8") : null;
const WIDTHS = [360, 768, 1280];
let passed = 0, failed = 0;

const check = (ok, what, detail = "") => {
  if (ok) passed++;
  else {
    failed++;
    console.log(`FAILED: ${what}${detail ? `: ${detail}` : ""}`);
  }
};
const giveway = (...args) => execFileSync(GIVEWAY, args, { encoding: "utf8", maxBuffer: 1 << 28, stdio: ["ignore", "pipe", "pipe"] });
const number = (text) => Number(text.replace("\u2212", "-").replace(/[^0-9.+-]/g, ""));
const saloon = join(SOURCE, "cases/fast-saloon.json");

function report(file, name, ...args) {
  const dir = join(TMPDIR, name);
  giveway("report", file, "-o", dir, "--quiet", "--date", "2026-03-01", ...args);
  return join(dir, "report.html");
}

// Every letter that has a meaning somewhere on the way: markup, scripts, gnuplot, both directions of reading.
const HOSTILE = {
  markup: `<script>window.hacked=1</script><img src=x onerror="window.hacked=2">`,
  ending: `</script></style></title></svg>--><b id="hacked">`,
  quotes: `"'\`{/:Bold x}^2_3 \\n $d0 & &amp; %s {kit} {load}`,
  long: "Unbreakable" + "x".repeat(180),
  accents: "Élastomère für Größe, čtyři, ångström",
  right: "\u05d2\u05d5\u05de\u05d9 \u0645\u0637\u0627\u0637 \u202eabc",
};

function hostileCase() {
  const text = readFileSync(saloon, "utf8");
  const c = JSON.parse(text);
  const h = HOSTILE;
  c.title = `${h.markup} ${h.ending} ${h.right}`;
  delete c.jobs; // both name joints and loads that are renamed here
  delete c.choose;
  [h.markup, h.ending, h.quotes, h.long, h.right].forEach((label, i) => { c.kits[i].label = label; });
  [`<i>&"'`, "</script>", "$x `y`", h.accents.slice(0, 20), h.right].forEach((name, i) => { c.loads[i].name = name; });
  const rename = (from, to) => {
    for (const joint of c.corners.front.joints) if (joint.name === from) joint.name = joint.label = to;
    for (const kit of c.kits)
      if (kit.fits && `front.${from}` in kit.fits) {
        kit.fits[`front.${to}`] = kit.fits[`front.${from}`];
        delete kit.fits[`front.${from}`];
      }
    for (const a of c.align.front.adjusters) if (a.joint === from) a.joint = to;
  };
  rename("lateral_inner", `<b>"&'`);
  rename("tension_inner", "\u05d2\u05d5\u05de\u05d9");
  c.bushes.upper_rubber.label = h.markup;
  c.bushes.lateral_rubber.label = h.long;
  const file = join(TMPDIR, "hostile.json");
  writeFileSync(file, JSON.stringify(c));
  return { file, c };
}

async function open(context, file) {
  const page = await context.newPage();
  await page.goto(`file://${file}`);
  return { page, seen: { get console() { return page.messages; }, get requests() { return page.requests.filter((u) => u !== `file://${file}` && !u.startsWith("data:")); } } };
}

/* Boxes of text that lie on one another: neighbours in the flow never should. */
const overlaps = () => {
  const boxes = [...document.querySelectorAll("h1, h2, h3, p, li, button, label, td, th, figcaption, dt, dd, figure > svg")]
    .filter((e) => e.checkVisibility() && getComputedStyle(e).position !== "absolute" && !e.closest("thead"))
    .map((e) => ({ e, r: e.getBoundingClientRect() })).filter((b) => b.r.width > 1 && b.r.height > 1);
  const bad = [];
  for (let i = 0; i < boxes.length; i++)
    for (let k = i + 1; k < boxes.length; k++) {
      const a = boxes[i], b = boxes[k];
      if (a.e.contains(b.e) || b.e.contains(a.e)) continue;
      const w = Math.min(a.r.right, b.r.right) - Math.max(a.r.left, b.r.left);
      const h = Math.min(a.r.bottom, b.r.bottom) - Math.max(a.r.top, b.r.top);
      if (w > 1 && h > 1) bad.push(`${a.e.textContent.slice(0, 30)} | ${b.e.textContent.slice(0, 30)}`);
    }
  return bad;
};

/* Text that its own box cuts off. */
const clipped = () => [...document.querySelectorAll("td, th, button, p, li, h1, h2, dd, figcaption")]
  .filter((e) => e.checkVisibility() && e.scrollWidth > e.clientWidth + 1 && getComputedStyle(e).display !== "inline")
  .map((e) => e.textContent.slice(0, 40));

/* Charts of the wheels that are not shown; the rear ones have places of their own for their words. */
const otherWheel = () => {
  const pressed = document.querySelector('button[data-axle][aria-pressed="true"]');
  const other = [...document.querySelectorAll("button[data-axle]")].find((b) => b !== pressed);
  if (!other) return false;
  other.click();
  return true;
};

/* Words in the charts that are shown which leave their picture or lie on others. */
const chartFaults = (page) => page.evaluate(`(${textsOf})([...document.querySelectorAll("figure.chart svg")].filter((s) => s.checkVisibility()))`);

async function layout(page, what) {
  for (const width of WIDTHS) {
    await page.setViewportSize({ width, height: 900 });
    const [has, room] = await page.evaluate(() => [document.documentElement.scrollWidth, document.documentElement.clientWidth]);
    check(has <= room, `${what}: nothing wider than ${width} px`, `${has}`);
    const lie = await page.evaluate(overlaps);
    check(lie.length === 0, `${what}: nothing overlaps at ${width} px`, lie.slice(0, 3).join("; "));
    const cut = await page.evaluate(clipped);
    check(cut.length === 0, `${what}: nothing is cut off at ${width} px`, cut.slice(0, 3).join("; "));
    for (const wheel of ["one wheel", "the other"]) {
      const { looked, outside, covered } = await chartFaults(page);
      if (wheel === "one wheel") check(looked > 0, `${what}: charts with words at ${width} px`);
      check(outside.length === 0, `${what}: words stay inside the charts of ${wheel} at ${width} px`, outside.slice(0, 3).join("; "));
      check(covered.length === 0, `${what}: words in the charts of ${wheel} lie on no others at ${width} px`, covered.slice(0, 3).join("; "));
      if (!(await page.evaluate(otherWheel))) break;
    }
  }
}

async function accessible(page, what) {
  if (!AXE) return;
  await page.evaluate(AXE);
  const found = await page.evaluate(async () => (await window.axe.run(document, { resultTypes: ["violations"] })).violations
    .map((v) => `${v.id} ${v.nodes[0].html.slice(0, 120)}`));
  check(found.length === 0, `${what}: the accessibility check finds nothing`, found.join("; "));
}

const pages = (pdf) => (pdf.toString("latin1").match(/\/Type\s*\/Page[^s]/g) || []).length;

const print = async (page) => pages(await page.pdf());

/* What the page shows of the chosen state, by the key of the result. */
const shown = (page) => page.evaluate(() => Object.fromEntries([...document.querySelectorAll("tr[data-figure]")]
  .map((row) => [row.dataset.figure, [row.cells[1].textContent, row.cells[2].textContent]])));

const transform = (page, id, name) => page.getAttribute(`#${id} .${name}`, "transform");

async function values(page, file) {
  const told = JSON.parse(giveway("compare", file, "--format", "json", "--quiet"));
  const kits = told.kits.map((k) => k.name);
  const loads = await page.evaluate(() => JSON.parse(document.getElementById("data").textContent).loads.map((l) => l.name));
  const near = (text, want, decimals) => Math.abs(number(text) - want) <= 0.5 * 10 ** -decimals + 1e-9;
  let looked = 0;
  for (const r of told.results) {
    const kit = kits.indexOf(r.kit), load = loads.indexOf(r.load), axle = r.corner === "front" ? 0 : 1;
    await page.click(`button[data-axle="${axle}"]`);
    await page.click(`button[data-load="${load}"]`);
    await page.click(`button[data-kit="${kit}"]`);
    const state = await shown(page);
    const wrong = ["toe_change_deg", "toe_deg", "camber_change_deg", "camber_deg", "camber_to_road_deg"]
      .filter((key) => (key in r ? !near(state[key][0], r[key], 2) : state[key][0] !== "\u2013"));
    if (!near(state.x_mm[0], r.wheel_centre_mm[0], 1)) wrong.push("x_mm");
    if (!near(state.y_mm[0], r.wheel_centre_mm[1], 1)) wrong.push("y_mm");
    const base = told.results.find((b) => b.kit === kits[0] && b.load === r.load && b.corner === r.corner);
    if (!near(state.toe_change_deg[1], base.toe_change_deg, 2)) wrong.push("the ghost's toe");
    const shares = await page.evaluate(() => [...document.querySelectorAll("#shares .value")].map((v) => v.textContent));
    const sum = shares.reduce((s, t) => s + number(t), 0);
    if (Math.abs(sum - r.toe_change_deg) > 0.005 * (shares.length + 1)) wrong.push("the sum of the shares");
    check(wrong.length === 0, `${r.kit}, ${r.corner}, ${r.load} reads as in the JSON`, wrong.join(", "));
    looked++;
  }
  check(looked === kits.length * told.results.filter((r) => r.kit === kits[0]).length, "every result was looked at");
  const table = await page.evaluate(() => [...document.querySelectorAll("[data-of-kit]")].map((e) => ({ ...e.dataset, text: e.textContent })));
  check(table.length > 0, "the table at the top holds figures");
  for (const cell of table) {
    const corner = cell.ofAxle === "0" ? "front" : "rear", kit = kits[Number(cell.ofKit)];
    const from = cell.ofLoad === undefined ? told.ride.find((r) => r.kit === kit && r.corner === corner)
      : told.results.find((r) => r.kit === kit && r.corner === corner && r.load === loads[Number(cell.ofLoad)]);
    check(near(cell.text, from[cell.key], cell.ofLoad === undefined ? 1 : 2), `${cell.key} of ${kit}, ${corner}, in the table`, `${cell.text}, not ${from[cell.key]}`);
  }
}

/* How near to its limit each joint works, and how many joints of a kit are beyond theirs, from what compare tells. */
async function limits(page, file, what) {
  const told = JSON.parse(giveway("compare", file, "--format", "json", "--quiet"));
  const kits = told.kits.map((k) => k.name), most = new Map(), beyond = kits.map(() => new Set());
  for (const r of told.results)
    for (const b of r.bushes)
      for (const c of (b.strain || b.bearing || { checks: [] }).checks) {
        const joint = `${r.corner} ${b.joint}`, key = `${kits.indexOf(r.kit)} ${joint}`;
        most.set(key, Math.max(most.get(key) || 0, (100 * c.value) / c.limit));
        if (!c.holds) beyond[kits.indexOf(r.kit)].add(joint);
      }
  const cells = await page.evaluate(() => [...document.querySelectorAll("[data-near-kit]")].map((e) => ({ ...e.dataset, text: e.querySelector("span").textContent })));
  check(cells.length === most.size && most.size > 10, `${what}: every joint that has a limit is in the table`, `${cells.length}, not ${most.size}`);
  const wrong = cells.filter((c) => !(Math.abs(number(c.text) - most.get(`${c.nearKit} ${c.nearAxle === "0" ? "front" : "rear"} ${c.nearJoint}`)) <= 0.5 + 1e-9));
  check(wrong.length === 0, `${what}: each stands as near to its limit as in the JSON`, JSON.stringify(wrong.slice(0, 2)));
  const rows = await page.evaluate(() => [...document.querySelectorAll("tr[data-stands]")].map((e) => [e.dataset.beyond, e.cells[1].textContent]));
  check(rows.length === kits.length && rows.every(([n], k) => Number(n) === beyond[k].size), `${what}: as many joints beyond a limit as in the JSON`, JSON.stringify(rows));
  const judged = (k) => [...most.keys()].filter((key) => key.startsWith(`${k} `)).length;
  check(rows.every(([, text], k) => Number.parseInt(text, 10) >= judged(k)), `${what}: as many joints judged`, JSON.stringify(rows));
}

async function controls(page) {
  const pressed = (group) => page.evaluate((g) => [...document.querySelectorAll(`[data-group="${g}"] button`)]
    .filter((b) => b.getAttribute("aria-pressed") === "true").map((b) => b.dataset[g]), group);
  await page.click('button[data-axle="0"]');
  await page.click('button[data-load="1"]');
  await page.click('button[data-kit="1"]');
  const before = await transform(page, "above", "wheel"), ghost = await transform(page, "above", "ghost");
  await page.click('button[data-kit="2"]');
  check((await pressed("kit")).join() === "2", "a kit that is pressed is the only one");
  check(await transform(page, "above", "wheel") !== before, "another kit turns the wheel");
  check(await transform(page, "above", "ghost") === ghost, "the ghost stays the standard kit's");
  await page.click('button[data-load="2"]');
  check(await transform(page, "behind", "ghost") !== "", "a load moves the ghost too");
  const data = await page.evaluate(() => JSON.parse(document.getElementById("data").textContent));
  const r = data.results.find((x) => x.kit === 2 && x.load === 2 && x.axle === 0);
  const turned = Number(/rotate\(([-0-9.e]+)/.exec(await transform(page, "above", "wheel"))[1]);
  check(Math.abs(turned - data.scale.toe * r.toe_deg) < 1e-9, "the wheel from above turns by toe times the stated scale");
  const leans = Number(/rotate\(([-0-9.e]+)/.exec(await transform(page, "behind", "wheel"))[1]);
  check(Math.abs(leans + data.scale.camber * r.camber_to_road_deg) < 1e-9, "the wheel from behind leans by camber times the stated scale");
  check((await page.textContent("#above + figcaption")).includes(`${data.scale.toe} times`), "the scale is stated");

  await page.focus('button[data-kit="2"]');
  await page.press("ArrowRight");
  check((await pressed("kit")).join() === "3", "the right arrow chooses the next kit");
  check(await page.evaluate(() => document.activeElement.dataset.kit === "3"), "and the focus goes with it");
  await page.press("End");
  await page.press("ArrowDown");
  check((await pressed("kit")).join() === "0", "arrows go round");
  await page.press("Home");
  await page.press("ArrowLeft");
  check((await pressed("kit")).join() === "4", "to the left as well");
  await page.press("Tab");
  check(await page.evaluate(() => document.activeElement.dataset.load === "0"), "Tab goes on to the loads");
  check(await page.evaluate(() => document.activeElement.matches(":focus-visible") && getComputedStyle(document.activeElement).outlineStyle !== "none"),
    "the focus is seen");
  await page.press("Space");
  check((await pressed("load")).join() === "0", "the space bar presses");

  const charts = () => page.evaluate(() => [...document.querySelectorAll("figure.chart")].filter((f) => f.checkVisibility()).map((f) => f.dataset.axle));
  await page.click('button[data-axle="1"]');
  check((await charts()).every((a) => a === "1") && (await charts()).length > 3, "the rear wheel's charts show with the rear wheel");
  await page.click('button[data-axle="0"]');
  check((await charts()).every((a) => a === "0") && (await charts()).length > 3, "the front wheel's with the front wheel");
}

async function slides(page) {
  const data = await page.evaluate(() => JSON.parse(document.getElementById("data").textContent));
  const set = (id, value) => page.evaluate(([i, v]) => {
    const s = document.getElementById(i);
    s.value = v;
    s.dispatchEvent(new Event("input", { bubbles: true }));
  }, [id, String(value)]);
  await page.click('button[data-axle="0"]');
  await page.click('button[data-kit="1"]');
  await page.focus("#brake");
  await page.press("Home");
  await page.press("ArrowRight");
  check((await page.textContent("#brake-shown")) === "0.01 g", "keys move the slider");
  check(await page.evaluate(() => document.querySelectorAll('[data-group="load"] [aria-pressed="true"]').length === 0), "a slider lets go of the load");
  const g = data.grid, states = g.states.find((s) => s.kit === 1 && s.axle === 0);
  const at = (key, i, j) => states[key][i * g.n_lateral + j];
  const text = async (key) => number((await shown(page))[key][0]);
  await set("brake", 0.4);
  await set("lateral", 0.3);
  check(Math.abs((await text("toe_deg")) - at("toe_deg", 4, 3)) <= 0.00501, "on a solved state the page shows it");
  check((await page.textContent("#state")).includes("solved state") && !(await page.textContent("#state")).includes("between"), "and says so");
  await set("brake", 0.45);
  const mean = (at("toe_deg", 4, 3) + at("toe_deg", 5, 3)) / 2;
  check(Math.abs((await text("toe_deg")) - mean) <= 0.00501, "half way between two it shows their mean");
  check((await page.textContent("#state")).includes("between"), "and says so");
  await set("lateral", 0.35);
  const four = (at("toe_deg", 4, 3) + at("toe_deg", 5, 3) + at("toe_deg", 4, 4) + at("toe_deg", 5, 4)) / 4;
  check(Math.abs((await text("toe_deg")) - four) <= 0.00501, "in the midst of four their mean");
  await set("brake", 0);
  const corner = JSON.parse(giveway("deflect", saloon, "--format", "json", "--quiet", "--kit", "poly", "--load", "fast sweeper", "--corner", "front")).results[0];
  await set("lateral", 0.9);
  check(Math.abs((await text("toe_change_deg")) - corner.toe_change_deg) <= 0.00501, "the slider and the load of the case agree");
  await page.click('button[data-load="2"]');
  check((await page.textContent("#lateral-shown")) === "0.90 g", "a load sets the sliders");
}

/* A wheel that a load does not act on has no picture, and says so in its place. */
async function stale(page) {
  await page.click('button[data-load="0"]');
  await page.click('button[data-axle="1"]');
  const see = () => page.evaluate(() => ["behind", "above"].map((id) => [
    getComputedStyle(document.querySelector(`#${id} .wheel`)).display !== "none", document.querySelector(`#${id} .stale`).checkVisibility()]).join());
  check((await see()) === "false,true,false,true", "without a result the wheel is gone and the picture says so", await see());
  await page.click('button[data-axle="0"]');
  check((await see()) === "true,false,true,false", "with a result it is back", await see());
}

/* On a telephone the picture stands right under its buttons, and words in charts can be read. */
async function telephone(page) {
  await page.setViewportSize({ width: 390, height: 844 });
  const found = await page.evaluate(() => {
    const groups = [...document.querySelectorAll(".controls .group")], stage = document.getElementById("behind").getBoundingClientRect();
    const sizes = [...document.querySelectorAll("figure svg")].filter((s) => s.checkVisibility()).flatMap((svg) => {
      const scale = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
      return [...svg.querySelectorAll("text")].filter((t) => t.textContent.trim() && t.checkVisibility()).map((t) => scale * Number.parseFloat(getComputedStyle(t).fontSize));
    });
    return { gap: stage.top - groups.at(-1).getBoundingClientRect().bottom, least: Math.min(...sizes), n: sizes.length };
  });
  check(found.gap >= 0 && found.gap < 40, "the picture stands right under its buttons", JSON.stringify(found));
  check(found.n > 50 && found.least >= 10.99, "no word in a picture is smaller than 11 pixels on a telephone", JSON.stringify(found));
}

async function hostile(context) {
  const { file, c } = hostileCase();
  const { page, seen } = await open(context, report(file, "hostile", "--for", "workshop"));
  check(await page.evaluate(() => window.hacked === undefined && !document.querySelector("#hacked, bdi b, bdi i, img")), "hostile names make nothing");
  check(seen.console.length === 0 && seen.requests.length === 0, "hostile names say and ask nothing", [...seen.console, ...seen.requests].join("; "));
  check((await page.textContent('button[data-kit="0"]')) === c.kits[0].label, "a hostile name is read as it is written");
  check((await page.textContent("h1")).length > 10, "the question is still there");
  check((await page.textContent('button[data-load="0"]')) === c.loads[0].name, "of a load too");
  await page.click('button[data-load="1"]');
  check((await page.textContent("#shares")).includes(`<b>"&'`), "a joint's name in the list of shares");
  const charts = await page.evaluate(() => [...document.querySelectorAll("figure.chart svg")].map((s) => s.textContent).join(" "));
  check(charts.includes("<script>window") && charts.includes(`<b>"&'`), "names stand in the charts letter by letter");
  await layout(page, "hostile names");
  await page.close();
}

async function variants(context) {
  const cases = [["hatchback", join(SOURCE, "cases/hatchback.json"), []], ["front alone", saloon, ["--corner", "front"]],
    ["two kits", saloon, ["--kit", "poly", "--kit", "mixed"]], ["one kit, one load", saloon, ["--kit", "rubber", "--load", "pure braking"]]];
  for (const [what, file, args] of cases) {
    const { page, seen } = await open(context, report(file, what.replace(/\W/g, "-"), ...args));
    check(seen.console.length === 0, `${what}: no message`, seen.console.join("; "));
    check((await print(page)) <= 2, `${what}: two sides of A4 at most`);
    await layout(page, what);
    await page.close();
  }
  const hatchback = join(SOURCE, "cases/hatchback.json");
  const { page } = await open(context, report(hatchback, "hatchback-shop", "--for", "workshop"));
  await limits(page, hatchback, "hatchback");
  await accessible(page, "hatchback, workshop");
  await page.close();
}

/* The whole page, in the letters that most machines without their own have. */
async function everything(browser) {
  const customer = await open(browser, report(saloon, "customer"));
  await layout(customer.page, "customer");
  await accessible(customer.page, "customer");
  await controls(customer.page);
  await slides(customer.page);
  await stale(customer.page);
  await telephone(customer.page);
  await values(customer.page, saloon);
  check(customer.seen.console.length === 0, "no console message", customer.seen.console.join("; "));
  check(customer.seen.requests.length === 0, "no request leaves the page", customer.seen.requests.join("; "));
  const workshop = await open(browser, report(saloon, "workshop", "--for", "workshop"));
  await layout(workshop.page, "workshop");
  await accessible(workshop.page, "workshop");
  await limits(workshop.page, saloon, "saloon");
  check(workshop.seen.console.length + workshop.seen.requests.length === 0, "workshop: no message, no request");
  await variants(browser);
  await hostile(browser);
}

/* What depends on how wide letters are: room for words, and the customer's two sides of A4. */
async function inLetters(browser, family) {
  const customer = await open(browser, join(TMPDIR, "customer", "report.html"));
  const drawn = await customer.page.familyOf("h1");
  check(drawn === family, `${family} is what the page is drawn with`, drawn);
  await layout(customer.page, `customer in ${family}`);
  check((await print(customer.page)) <= 2, `in ${family} the customer's page prints on two sides of A4`);
  const workshop = await open(browser, join(TMPDIR, "workshop", "report.html"));
  await layout(workshop.page, `workshop in ${family}`);
  const hatchback = await open(browser, join(TMPDIR, "hatchback", "report.html"));
  await layout(hatchback.page, `hatchback in ${family}`);
  check((await print(hatchback.page)) <= 2, `in ${family} the hatchback's page prints on two sides of A4`);
}

mkdirSync(TMPDIR, { recursive: true });
const families = [NARROW, WIDE].filter(installed);
for (const [i, family] of families.entries()) {
  const browser = await launch(CHROMIUM, TMPDIR, fontsOf(family, join(TMPDIR, `letters-${i}`)));
  try {
    if (i === 0) await everything(browser);
    await inLetters(browser, family);
  } finally {
    await browser.close();
  }
}
for (const family of [NARROW, WIDE].filter((f) => !installed(f))) console.log(`ok - the page in ${family} # SKIP it is not installed`);
if (!AXE) console.log("ok - accessibility # SKIP axe-core is not installed: scripts/setup.sh check --retry");
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed || !passed ? 1 : 0;
