"use strict";
/* The page that moves: buttons and sliders choose a state, and everything that shows it is set anew. */
(() => {
  document.documentElement.classList.add("scripts");
  const data = JSON.parse(document.getElementById("data").textContent);
  const all = (selector, root = document) => [...root.querySelectorAll(selector)];
  const byIndex = (list, index) => list.find((entry) => entry.index === index);
  const state = { kit: data.start.kit, load: data.start.load, axle: data.start.axle, brake: 0, lateral: 0 };
  const sliders = { brake: document.getElementById("brake"), lateral: document.getElementById("lateral") };

  /* {name} in a sentence of the page. */
  const say = (sentence, parts) => sentence.replace(/\{(\w+)\}/g, (whole, name) => (name in parts ? parts[name] : whole));
  /* Names keep their own direction of reading in the midst of a sentence. */
  const isolate = (name) => "\u2068" + name + "\u2069";
  const figure = (value, decimals) => {
    const text = value.toFixed(decimals);
    return (Number(text) === 0 ? text.replace("-", "") : text).replace("-", "\u2212");
  };
  /* Where both ways have a meaning, a plus is written too. */
  const signed = (value, decimals) => (Number(value.toFixed(decimals)) > 0 ? "+" : "") + figure(value, decimals);

  const resultOf = (kit) => data.results.find((r) => r.kit === kit && r.axle === state.axle && r.load === state.load);

  /* Where a value lies between two solved rows or columns. */
  const place = (value, to, n) => {
    const at = (value / to) * (n - 1);
    const from = Math.min(Math.floor(at + 1e-9), n - 2);
    return { from, part: Math.min(Math.max(at - from, 0), 1) };
  };

  /* Straight lines between the four solved states around; null where one that counts is missing. */
  const between = (states, key, b, l) => {
    const n = data.grid.n_lateral;
    let sum = 0;
    for (const [i, wb] of [[0, 1 - b.part], [1, b.part]])
      for (const [j, wl] of [[0, 1 - l.part], [1, l.part]]) {
        if (wb * wl < 1e-9) continue;
        const value = states[key][(b.from + i) * n + l.from + j];
        if (value === null) return null;
        sum += wb * wl * value;
      }
    return sum;
  };

  const slidOf = (kit) => {
    const g = data.grid;
    const states = g.states.find((s) => s.kit === kit && s.axle === state.axle);
    if (!states) return null;
    const b = place(state.brake, g.brake_to_g, g.n_brake), l = place(state.lateral, g.lateral_to_g, g.n_lateral);
    const out = {};
    for (const key of ["toe_deg", "toe_change_deg", "camber_deg", "camber_change_deg", "camber_to_road_deg", "x_mm", "y_mm"]) {
      out[key] = between(states, key, b, l);
      if (out[key] === null) return null;
    }
    out.between = [b, l].some((p) => p.part > 1e-6 && p.part < 1 - 1e-6);
    return out;
  };

  const shown = (kit) => {
    const found = state.load === null ? slidOf(kit) : resultOf(kit);
    const rim = byIndex(data.axles, state.axle).rim_mm;
    return found && rim > 0 ? { ...found, rim_mm: rim * Math.sin((found.toe_change_deg * Math.PI) / 180) } : found;
  };

  const turn = (id, name, transform) => document.querySelector(`#${id} .${name}`).setAttribute("transform", transform);

  const draw = (name, s) => {
    const camber = "camber_to_road_deg" in s ? s.camber_to_road_deg : s.camber_deg;
    const k = data.scale.pixels_per_mm;
    turn("behind", name, `rotate(${-data.scale.camber * camber} 130 196)`);
    turn("above", name, `translate(${-k * s.y_mm} ${-k * s.x_mm}) rotate(${data.scale.toe * s.toe_deg} 130 118)`);
  };

  const fillTable = (mine, base) => {
    for (const row of all("tr[data-figure]")) {
      const decimals = Number(row.dataset.decimals);
      [mine, base].forEach((s, i) => {
        const has = s && typeof s[row.dataset.figure] === "number";
        row.cells[i + 1].textContent = has ? signed(s[row.dataset.figure], decimals) + row.dataset.unit : "\u2013";
      });
    }
    document.getElementById("state-kit").firstElementChild.textContent = byIndex(data.kits, state.kit).label;
  };

  const lastLateral = () => {
    for (let lateral = state.lateral; lateral >= 0; lateral -= 0.01) {
      const was = state.lateral;
      state.lateral = lateral;
      const found = slidOf(state.kit) && slidOf(data.start.base);
      state.lateral = was;
      if (found) return Math.max(lateral, 0);
    }
    return 0;
  };

  const sentence = (mine) => {
    const parts = {
      kit: isolate(byIndex(data.kits, state.kit).label), axle: byIndex(data.axles, state.axle).name,
      brake: state.brake.toFixed(2), lateral: state.lateral.toFixed(2),
    };
    if (state.load !== null) {
      parts.load = isolate(byIndex(data.loads, state.load).phrase);
      return say(data.words.state_load, parts) + (mine ? "" : ": " + data.words.none);
    }
    const where = mine ? data.words[mine.between ? "between" : "solved"]
      : say(data.words.lifts, { lateral: (Math.floor(lastLateral() * 100) / 100).toFixed(2) });
    return say(data.words.state_slider, parts) + ": " + where;
  };

  const shareRow = (name, value, widest) => {
    const row = document.createElement("li");
    const label = row.appendChild(document.createElement("bdi"));
    const bar = row.appendChild(document.createElement("span"));
    const number = row.appendChild(document.createElement("span"));
    const ink = bar.appendChild(document.createElement("i"));
    const half = (50 * Math.abs(value)) / widest;
    label.textContent = name;
    bar.className = "bar";
    number.className = "value";
    number.textContent = signed(value, 2) + "\u00b0";
    ink.style.width = half + "%";
    ink.style.left = (value < 0 ? 50 - half : 50) + "%";
    return row;
  };

  /* The bushes that matter most, what the wheel's travel does, and the rest in one. */
  const fillShares = (mine) => {
    const list = document.getElementById("shares");
    list.replaceChildren();
    if (!mine || !mine.shares) {
      list.appendChild(document.createElement("li")).textContent = mine ? data.words.shares_none : data.words.none;
      return;
    }
    const sorted = [...mine.shares].sort((a, b) => Math.abs(b.toe_deg) - Math.abs(a.toe_deg));
    const top = sorted.slice(0, 5).filter((s) => Math.abs(s.toe_deg) >= 0.0005);
    const rest = mine.toe_change_deg - mine.travel_toe_deg - top.reduce((sum, s) => sum + s.toe_deg, 0);
    const rows = [...top.map((s) => [s.joint, s.toe_deg]), [data.words.rest, rest], [data.words.travel, mine.travel_toe_deg]];
    const widest = Math.max(1e-9, ...rows.map((r) => Math.abs(r[1])));
    for (const [name, value] of rows) list.appendChild(shareRow(name, value, widest));
  };

  const press = () => {
    for (const key of ["kit", "load", "axle"])
      for (const button of all(`button[data-${key}]`))
        button.setAttribute("aria-pressed", String(Number(button.dataset[key]) === state[key]));
  };

  const showSliders = () => {
    for (const [key, slider] of Object.entries(sliders)) {
      if (!slider) continue;
      slider.value = state[key];
      slider.setAttribute("aria-valuetext", state[key].toFixed(2) + " g");
      document.getElementById(key + "-shown").textContent = state[key].toFixed(2) + " g";
    }
  };

  const render = () => {
    const mine = shown(state.kit), base = shown(data.start.base);
    const stage = document.getElementById("stage"), colour = byIndex(data.kits, state.kit).colour;
    stage.style.setProperty("--kit", colour);
    document.getElementById("shares").style.setProperty("--kit", colour);
    if (mine) draw("wheel", mine);
    if (base) draw("ghost", base);
    stage.classList.toggle("nothing", !mine);
    stage.classList.toggle("no-ghost", !base);
    fillTable(mine, base);
    fillShares(mine);
    document.getElementById("state").textContent = sentence(mine);
    for (const chart of all("figure[data-axle]"))
      if (!document.body.hasAttribute("data-both")) chart.hidden = Number(chart.dataset.axle) !== state.axle;
    press();
    showSliders();
  };

  const choose = (button) => {
    for (const key of ["kit", "load", "axle"])
      if (key in button.dataset) state[key] = Number(button.dataset[key]);
    if ("load" in button.dataset) {
      const load = byIndex(data.loads, state.load);
      state.brake = load.slides ? load.brake_g : 0;
      state.lateral = load.slides ? load.lateral_g : 0;
    }
    render();
  };

  const STEPS = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };
  const onKey = (event) => {
    const buttons = all("button", event.currentTarget), at = buttons.indexOf(event.target);
    let to = at;
    if (event.key in STEPS) to = (at + STEPS[event.key] + buttons.length) % buttons.length;
    else if (event.key === "Home") to = 0;
    else if (event.key === "End") to = buttons.length - 1;
    else return;
    event.preventDefault();
    buttons[to].focus();
    choose(buttons[to]);
  };

  for (const group of all("[data-group]")) {
    group.addEventListener("keydown", onKey);
    for (const button of all("button", group)) button.addEventListener("click", () => choose(button));
  }
  for (const [key, slider] of Object.entries(sliders))
    slider?.addEventListener("input", () => {
      state[key] = Number(slider.value);
      state.load = null;
      render();
    });

  /* On a narrow screen each cell of the table carries the name of its column. */
  for (const table of all("table.glance")) {
    const names = all("thead th", table).map((th) => th.textContent);
    for (const row of all("tbody tr", table)) all("td", row).forEach((td, i) => { td.dataset.name = names[i + 1]; });
  }
  const start = byIndex(data.loads, state.load);
  if (start.slides) Object.assign(state, { brake: start.brake_g, lateral: start.lateral_g });
  render();
})();
