/* SPDX-License-Identifier: MIT */
(() => {
  "use strict";
  document.documentElement.classList.add("scripts");
  const data = JSON.parse(document.getElementById("data").textContent);
  const all = (selector, root = document) => [...root.querySelectorAll(selector)];
  const byId = (id) => document.getElementById(id);
  const byIndex = (list, index) => list.find((entry) => entry.index === index);
  const state = { kit: data.start.kit, load: data.start.load, axle: data.start.axle, brake: 0, lateral: 0,
    factor: data.factor, yaw: 25, pitch: 12, joint: null };
  const sliders = { brake: byId("brake"), lateral: byId("lateral") };
  const still = matchMedia("(prefers-reduced-motion: reduce)");

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
  const element = (name, attributes = {}, text = undefined) => {
    const made = document.createElement(name);
    for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
    if (text !== undefined) made.textContent = text;
    return made;
  };
  const shape = (name, attributes = {}, text = undefined) => {
    const made = document.createElementNS("http://www.w3.org/2000/svg", name);
    for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
    if (text !== undefined) made.textContent = text;
    return made;
  };
  const kitClass = (kit) => "k" + (kit % 8);

  for (const r of data.results)
    r.shares = r.shares.map(([toe_deg, given_mm, force_N, limit_percent, limit]) => ({ toe_deg, given_mm, force_N, limit_percent, limit }));
  const resultOf = (kit) => data.results.find((r) => r.kit === kit && r.axle === state.axle && r.load === state.load);

  /* ---- numbers in short: see page/pack.h ---- */

  const DIGIT = new Map([...data.digits].map((digit, i) => [digit, i])), HALF = data.digits.length / 2;
  const unpack = (text) => {
    const out = [];
    let value = 0, place = 1;
    for (const character of text) {
      if (character === " ") { out.push(null); continue; }
      const digit = DIGIT.get(character);
      value += (digit % HALF) * place;
      place *= HALF;
      if (digit >= HALF) continue;
      out.push(value % 2 ? -(value + 1) / 2 : value / 2);
      value = 0;
      place = 1;
    }
    return out;
  };
  for (const states of data.grid.states)
    for (const [key, steps] of Object.entries(data.grid.steps))
      states[key] = unpack(states[key]).map((value) => (value === null ? null : value / steps));

  /* ---- between solved states ---- */

  /* Where a value lies between two solved rows or columns. */
  const place = (value, to, n) => {
    const at = (value / to) * (n - 1);
    const from = Math.min(Math.floor(at + 1e-9), n - 2);
    return { from, part: Math.min(Math.max(at - from, 0), 1) };
  };

  /* The four solved states around, each with its weight; those that count for nothing are left out. */
  const corners = (b, l, columns) => [[0, 0], [0, 1], [1, 0], [1, 1]]
    .map(([i, j]) => ({ at: (b.from + i) * columns + l.from + j, weight: (i ? b.part : 1 - b.part) * (j ? l.part : 1 - l.part) }))
    .filter((c) => c.weight > 1e-9);

  /* Straight lines between the four solved states around; null where one that counts is missing. */
  const between = (values, around) => {
    let sum = 0;
    for (const { at, weight } of around) {
      if (values[at] === null) return null;
      sum += weight * values[at];
    }
    return sum;
  };

  const KEYS = ["toe_deg", "camber_deg", "camber_to_road_deg", "x_mm", "y_mm", "inner_toe_deg", "inner_camber_to_road_deg"];
  const slidOf = (kit) => {
    const g = data.grid;
    const states = g.states.find((s) => s.kit === kit && s.axle === state.axle);
    if (!states) return null;
    const b = place(state.brake, g.brake_to_g, g.n_brake), l = place(state.lateral, g.lateral_to_g, g.n_lateral);
    const out = {};
    for (const key of KEYS) {
      out[key] = between(states[key], corners(b, l, g.n_lateral));
      if (out[key] === null && !key.startsWith("inner")) return null;
    }
    for (const angle of ["toe", "camber"]) out[`${angle}_change_deg`] = out[`${angle}_deg`] - states[`${angle}_set_deg`];
    out.between = [b, l].some((p) => p.part > 1e-6 && p.part < 1 - 1e-6);
    return out;
  };

  const shown = (kit) => {
    const found = state.load === null ? slidOf(kit) : resultOf(kit);
    const rim = byIndex(data.axles, state.axle).rim_mm;
    return found && rim > 0 ? { ...found, rim_mm: rim * Math.sin((found.toe_change_deg * Math.PI) / 180) } : found;
  };

  /* ---- the drawing: how every part has moved ---- */

  const readPicture = (axle, text) => {
    if (text === null) return null;
    const all = unpack(text), parts = 6 * (axle.bodies.length - 1), joints = axle.joints.length;
    let at = 0;
    const take = (n) => all.slice(at, (at += n));
    return { angles_deg: take(4).map((v) => v / 1e4), lean: take(2).map((v, i) => v / [1e3, 10][i]), height: take(parts), adds: take(parts), share: take(joints), given: take(joints) };
  };
  /* Pictures of a kit, under loads or in states of the sliders, are read when they are first asked for. */
  const picturesOf = (kit, index, key) => {
    const of = data.drawing.pictures.find((p) => p.kit === kit && p.axle === index), axle = byIndex(data.drawing.axles, index);
    if (of && of[key].some((p) => typeof p === "string")) of[key] = of[key].map((text) => readPicture(axle, text));
    return of;
  };
  const mix = (pictures, around, key) => pictures[around[0].at][key].map((_, i) =>
    around.reduce((sum, c) => sum + c.weight * pictures[c.at][key][i], 0));
  const FARTHEST_MM = 1000; /* a roll centre beyond is not drawn */
  const centreOf = (mm) => (mm !== null && Math.abs(mm) <= FARTHEST_MM ? mm : null);
  const pictureOf = (kit) => {
    const d = data.drawing, of = picturesOf(kit, state.axle, state.load === null ? "states" : "loads");
    if (!of) return null;
    if (state.load !== null) return of.loads[state.load] && { ...of.loads[state.load], fine: 10, centre: centreOf(of.roll_centre_mm) };
    if (d.n_brake < 2) return null;
    const around = corners(place(state.brake, data.grid.brake_to_g, d.n_brake), place(state.lateral, data.grid.lateral_to_g, d.n_lateral), d.n_lateral);
    if (around.some((c) => !of.states[c.at])) return null;
    return { centre: centreOf(of.roll_centre_mm),
      ...Object.fromEntries(["lean", "height", "adds", "share", "given", "angles_deg"].map((key) => [key, mix(of.states, around, key)])) };
  };

  /* A point of a body in a state [mm]: the wheels' height moves it as it is, what the load adds is exaggerated. */
  const turned = (v, w) => {
    const size = Math.hypot(...w);
    if (size < 1e-12) return v;
    const k = w.map((x) => x / size), c = Math.cos(size), s = Math.sin(size), dot = k[0] * v[0] + k[1] * v[1] + k[2] * v[2];
    return [0, 1, 2].map((i) => v[i] * c + (k[(i + 1) % 3] * v[(i + 2) % 3] - k[(i + 2) % 3] * v[(i + 1) % 3]) * s + k[i] * dot * (1 - c));
  };
  const moveOf = (picture, body, i) => {
    const at = 6 * (body - 1) + i, fine = picture.fine || 1;
    return ((picture.height[at] + (state.factor * picture.adds[at]) / 10) / fine / 1e3) * (i < 3 ? 1e3 : 1);
  };
  const inBody = (axle, picture, body, at) => {
    if (body === 0) return at;
    const mark = axle.bodies[body].mark, about = turned(at.map((x, i) => x - mark[i]), [3, 4, 5].map((i) => moveOf(picture, body, i)));
    return about.map((x, i) => x + mark[i] + moveOf(picture, body, i));
  };
  /* The body leans about the roll centre and rises as it does, at its true size; the left wheel is the outer one. */
  const roadOf = (axle) => axle.wheel[2] - axle.radius;
  const leaned = (axle, picture, p) => {
    const [degrees, rise] = picture.lean, a = (degrees * Math.PI) / 180, at = picture.centre === null ? axle.wheel[2] : roadOf(axle) + picture.centre, above = p[2] - at;
    return [p[0], p[1] * Math.cos(a) + above * Math.sin(a), at + above * Math.cos(a) - p[1] * Math.sin(a) + rise];
  };
  const placed = (axle, picture, body, at) => (picture ? leaned(axle, picture, inBody(axle, picture, body, at)) : at);

  /* Seen from behind the picture's right is the car's right; turning and tilting go from there. */
  const WIDE = 660, HIGH = 400, FLAG_MM = 120;
  const projector = (axle) => {
    const yaw = (state.yaw * Math.PI) / 180, pitch = (state.pitch * Math.PI) / 180;
    const middle = [axle.wheel[0], 0, axle.wheel[2] + 90], scale = (WIDE / 2 - 12) / (Math.abs(axle.wheel[1]) + 260);
    return (p) => {
      const x = p[0] - middle[0], y = p[1] - middle[1], z = p[2] - middle[2];
      const ahead = x * Math.cos(yaw) - y * Math.sin(yaw), left = x * Math.sin(yaw) + y * Math.cos(yaw);
      return [WIDE / 2 - scale * left, HIGH / 2 - scale * (z * Math.cos(pitch) + ahead * Math.sin(pitch))];
    };
  };
  const path = (points, see) => points.map((p, i) => (i ? "L" : "M") + see(p).map((x) => x.toFixed(1)).join(" ")).join("");

  const linesOf = (axle, picture, see) => {
    let links = "";
    for (const j of axle.joints)
      for (const body of [j.a, j.b])
        if (body !== 0) links += path([placed(axle, picture, body, axle.bodies[body].mark), placed(axle, picture, body, j.at)], see);
    return links;
  };
  const tyresOf = (axle, picture, see) => {
    let rims = "";
    for (const [body, side] of [[1, 1], [axle.right, -1]])
      for (const edge of [-0.5, 0.5]) {
        const ring = [];
        for (let i = 0; i <= 32; i++) {
          const a = (i * Math.PI) / 16, c = axle.wheel;
          ring.push(placed(axle, picture, body, [c[0] + axle.radius * Math.cos(a), side * c[1] + edge * axle.width, c[2] + axle.radius * Math.sin(a)]));
        }
        rims += path(ring, see);
      }
    return rims;
  };
  const strutsOf = (axle, picture, see) => [...axle.springs, ...axle.dampers].map((s) => path([placed(axle, picture, s.body, s.at), placed(axle, picture, 0, s.to)], see)).join("");
  /* The body's middle, from the roll centre up. */
  const middleOf = (axle, picture, see) => {
    const x = axle.wheel[0], foot = picture.centre === null ? axle.wheel[2] : roadOf(axle) + picture.centre;
    return [foot, axle.wheel[2] + 2 * FLAG_MM].map((z) => see(placed(axle, picture, 0, [x, 0, z])));
  };

  const shareOf = (picture, j) => picture.share[j] / 1e3;
  /* Of a corner that stands for both wheels: its joints have one label, and a side of their own. */
  const nameOf = (joint) => joint.label + (joint.side || "");
  const dotOf = (axle, picture, see, j, most) => {
    const joint = axle.joints[j], share = shareOf(picture, j), size = 2.5 + 10 * Math.sqrt(Math.abs(share) / most);
    const [x, y] = see([0, 1, 2].map((i) => (placed(axle, picture, joint.a, joint.at)[i] + placed(axle, picture, joint.b, joint.at)[i]) / 2));
    const dot = shape("g", { class: "dot " + (share < 0 ? "out" : "in"), "data-joint": j, role: "button", tabindex: -1,
      "aria-label": `${nameOf(joint)}: ${signed(share, 3)}\u00b0`, "aria-pressed": String(state.joint === j), transform: `translate(${x.toFixed(1)} ${y.toFixed(1)})` });
    dot.append(shape("circle", { class: "touch", r: 13 }), share < 0
      ? shape("rect", { x: -size * 0.8, y: -size * 0.8, width: 1.6 * size, height: 1.6 * size, transform: "rotate(45)" })
      : shape("circle", { r: size.toFixed(2) }));
    return dot;
  };

  /* The scene is made once and then redrawn: it keeps its focus. */
  const scene = shape("svg", { viewBox: `0 0 ${WIDE} ${HIGH}`, id: "scene", class: "scene", tabindex: 0, role: "group",
    "aria-label": "The axle, both wheels. Arrow keys turn it; Tab goes on to the bushes" });
  const layers = Object.fromEntries(["ground", "rest", "tyres-rest", "struts", "middle", "loaded", "tyres", "roll", "dots", "names"].map((name) => [name, shape(["dots", "names", "roll"].includes(name) ? "g" : "path", { class: name })]));
  scene.append(...Object.values(layers));
  const noneShown = shape("text", { x: WIDE / 2, y: 40, "text-anchor": "middle", class: "stale" }, "No result for this load on this axle");
  scene.append(noneShown);

  const drawDots = (axle, picture, see) => {
    const focused = document.activeElement?.closest?.(".dot")?.dataset.joint;
    layers.dots.replaceChildren();
    if (!picture) return;
    const most = Math.max(1e-9, ...picture.share.map((s) => Math.abs(s) / 1e3));
    const order = axle.joints.map((_, j) => j).sort((a, b) => Math.abs(shareOf(picture, a)) - Math.abs(shareOf(picture, b)));
    for (const j of order) layers.dots.append(dotOf(axle, picture, see, j, most));
    const first = state.joint !== null ? layers.dots.querySelector(`[data-joint="${state.joint}"]`) : layers.dots.lastElementChild;
    first?.setAttribute("tabindex", 0);
    if (focused !== undefined) layers.dots.querySelector(`[data-joint="${focused}"]`)?.focus({ preventScroll: true });
  };
  const wheelNames = (axle, see) => [[axle.wheel, "left"], [[axle.wheel[0], -axle.wheel[1], axle.wheel[2]], "right"]].map(([at, name]) => {
    const [x, y] = see([at[0], at[1], at[2] - axle.radius - 20]);
    return { name, x: Math.min(Math.max(x, 36), WIDE - 36), y: Math.min(y + 12, HIGH - 8) };
  });
  const drawNames = (axle, picture, see) => {
    layers.names.replaceChildren(...wheelNames(axle, see).map(({ name, x, y }) => shape("text", { x: x.toFixed(1), y: y.toFixed(1), "text-anchor": "middle" }, name)));
  };
  /* Where the words of the roll centre stand clear of the wheels' names: below it, else below or above all. */
  const ON_PAPER = 27;
  let paper = false;
  const clearOf = (names, x, y, text) => {
    const letter = paper ? ON_PAPER : Number.parseFloat(getComputedStyle(scene).fontSize) || ON_PAPER, top = y + letter;
    const free = (at) => names.every((n) => Math.abs(at - n.y) > 1.1 * letter || Math.abs(x - n.x) > 0.31 * letter * (text.length + n.name.length) + 8);
    return [top, Math.max(...names.map((n) => n.y)) + 1.2 * letter].find((at) => at <= HIGH - 8 && free(at)) ?? letter + 4;
  };
  /* The roll centre is a place of the body: it stands where a little roll about standing still leaves it. */
  const drawRoll = (axle, picture, see) => {
    const [foot, top] = picture ? middleOf(axle, picture, see) : [[0, 0], [0, 0]];
    layers.middle.setAttribute("d", picture ? `M${foot.map((v) => v.toFixed(1)).join(" ")}L${top.map((v) => v.toFixed(1)).join(" ")}` : "");
    layers.roll.replaceChildren();
    if (!picture) return;
    const word = (x, y, name, text) => shape("text", { x: x.toFixed(1), y: y.toFixed(1), class: name, "text-anchor": "middle" }, text);
    if (picture.lean[0]) layers.roll.append(word(top[0], top[1] - 6, "leans", `leans ${figure(picture.lean[0], 2)}\u00b0`));
    if (picture.centre === null) return;
    const said = `roll centre ${Math.abs(picture.centre).toFixed(0)}\u00a0mm ${picture.centre < 0 ? "below" : "above"} the road`;
    layers.roll.append(shape("circle", { cx: foot[0].toFixed(1), cy: foot[1].toFixed(1), r: 5, class: "roll-centre" }),
      word(foot[0], clearOf(wheelNames(axle, see), foot[0], foot[1] + 5, said), "roll-height", said));
  };
  const drawScene = () => {
    const axle = byIndex(data.drawing.axles, state.axle), picture = pictureOf(state.kit), see = projector(axle);
    layers.rest.setAttribute("d", linesOf(axle, null, see));
    layers["tyres-rest"].setAttribute("d", tyresOf(axle, null, see));
    layers.loaded.setAttribute("d", picture ? linesOf(axle, picture, see) : "");
    layers.tyres.setAttribute("d", picture ? tyresOf(axle, picture, see) : "");
    layers.struts.setAttribute("d", strutsOf(axle, picture, see));
    const { wheel, radius } = axle, road = wheel[2] - radius;
    layers.ground.setAttribute("d", [1, -1].map((side) => path([[wheel[0] - 420, side * wheel[1], road], [wheel[0] + 420, side * wheel[1], road]], see)).join("")
      + path([[wheel[0], wheel[1] + 120, road], [wheel[0], -wheel[1] - 120, road]], see));
    drawDots(axle, picture, see);
    drawNames(axle, picture, see);
    drawRoll(axle, picture, see);
    scene.setAttribute("data-yaw", Math.round(state.yaw));
    scene.setAttribute("data-pitch", Math.round(state.pitch));
    scene.classList.toggle("nothing", !picture);
    scene.classList.add(kitClass(state.kit));
    for (let k = 0; k < 8; k++) scene.classList.toggle("k" + k, k === state.kit % 8);
  };

  /* ---- the bush that was touched ---- */

  const row = (name, value) => { const r = element("div"); r.append(element("dt", {}, name), element("dd", {}, value)); return r; };
  const drawBush = () => {
    const box = byId("bush"), axle = byIndex(data.drawing.axles, state.axle), picture = pictureOf(state.kit);
    box.replaceChildren();
    if (state.joint === null || state.joint >= axle.joints.length) {
      box.append(element("p", { class: "note" }, "Touch a bush in the drawing, or go there with Tab and the arrow keys: round ones turn the wheel in, square ones out; the larger, the more."));
      return;
    }
    const joint = axle.joints[state.joint], fit = data.drawing.fits.find((f) => f.kit === state.kit && f.axle === state.axle).joints[joint.joint];
    const list = element("dl"), title = element("h3");
    title.append(element("bdi", {}, joint.label), joint.side || "");
    list.append(row("Bush", fit.bush));
    if (picture) {
      const borne = joint.own && state.load !== null ? resultOf(state.kit)?.shares[joint.joint] : null;
      if (borne || state.load !== null) list.append(row("Gives", figure(borne ? borne.given_mm : picture.given[state.joint] / 100, 2) + "\u00a0mm"));
      list.append(row("Turns the wheel", signed(borne ? borne.toe_deg : shareOf(picture, state.joint), 3) + "\u00b0"));
      if (borne) {
        list.append(row("Carries", Math.round(borne.force_N) + "\u00a0N"));
        list.append(row("Of its limit", borne.limit_percent === undefined ? "not judged" : `${Math.round(borne.limit_percent)}\u00a0% (${borne.limit})`));
      }
    }
    if (fit.price !== null) list.append(row("Price", `${fit.price} ${data.drawing.currency || ""} each`));
    box.append(title, list);
  };
  const chooseJoint = (joint) => { state.joint = joint; drawScene(); drawBush(); };

  /* ---- turning it ---- */

  let running = 0;
  const VIEWS = { behind: [0, 0], above: [0, 90], side: [90, 0], corner: [25, 12] };
  const turnTo = (yaw, pitch) => {
    cancelAnimationFrame(running);
    const from = [state.yaw, state.pitch], began = performance.now();
    const step = (now) => {
      const part = still.matches ? 1 : Math.min((now - began) / 250, 1), ease = part * part * (3 - 2 * part);
      state.yaw = from[0] + ease * (yaw - from[0]);
      state.pitch = from[1] + ease * (pitch - from[1]);
      drawScene();
      if (part < 1) running = requestAnimationFrame(step);
    };
    if (still.matches) step(began); else running = requestAnimationFrame(step);
  };
  const turnBy = (yaw, pitch) => {
    cancelAnimationFrame(running);
    state.yaw = ((state.yaw + yaw + 540) % 360) - 180;
    state.pitch = Math.max(-90, Math.min(90, state.pitch + pitch));
    drawScene();
  };
  const TURNS = { ArrowLeft: [-10, 0], ArrowRight: [10, 0], ArrowUp: [0, 10], ArrowDown: [0, -10] };
  scene.addEventListener("keydown", (event) => {
    const dot = event.target.closest(".dot");
    if (dot && (event.key === "Enter" || event.key === " ")) { event.preventDefault(); chooseJoint(Number(dot.dataset.joint)); return; }
    if (!(event.key in TURNS)) return;
    event.preventDefault();
    if (!dot) { turnBy(...TURNS[event.key]); return; }
    const dots = all(".dot", layers.dots), step = event.key === "ArrowRight" || event.key === "ArrowDown" ? -1 : 1;
    const to = dots[(dots.indexOf(dot) + step + dots.length) % dots.length];
    to.focus({ preventScroll: true });
    chooseJoint(Number(to.dataset.joint));
  });
  let grip = null;
  scene.addEventListener("pointerdown", (event) => { grip = { x: event.clientX, y: event.clientY, moved: false, dot: event.target.closest(".dot")?.dataset.joint }; });
  addEventListener("pointermove", (event) => {
    if (!grip || !(event.buttons & 1)) return;
    const dx = event.clientX - grip.x, dy = event.clientY - grip.y;
    if (!grip.moved && Math.hypot(dx, dy) < 4) return;
    grip = { ...grip, x: event.clientX, y: event.clientY, moved: true };
    turnBy(dx * 0.5, dy * 0.5);
  });
  addEventListener("pointerup", () => { if (grip && !grip.moved && grip.dot !== undefined) chooseJoint(Number(grip.dot)); grip = null; });
  addEventListener("pointercancel", () => { grip = null; });

  /* ---- protractors: both wheels, from above and from behind ---- */

  const DIALS = [["toe", 0], ["camber", 0], ["toe", 1], ["camber", 1]];
  const LIMITS = [0.5, 1, 2, 3, 5, 10];
  const anglesOf = (kit) => {
    const s = shown(kit), picture = pictureOf(kit);
    if (!s) return null;
    const lean = s.camber_to_road_deg ?? s.camber_deg;
    if (state.load === null) return [s.toe_deg, lean, s.inner_toe_deg, s.inner_camber_to_road_deg];
    const roll = lean - s.camber_deg;
    return [s.toe_deg, lean, picture ? picture.angles_deg[1] : null, picture ? picture.angles_deg[3] - roll : null];
  };
  const limitOf = () => {
    const most = Math.max(0.1, ...data.results.filter((r) => r.axle === state.axle).flatMap((r) => {
      const lean = r.camber_to_road_deg ?? r.camber_deg, inner = picturesOf(r.kit, r.axle, "loads")?.loads[r.load]?.angles_deg;
      return [r.toe_deg, lean, ...(inner ? [inner[1], inner[3] - lean + r.camber_deg] : [])].map(Math.abs);
    }));
    return LIMITS.find((l) => l >= most) || Math.ceil(most);
  };
  /* Toe-in turns the left wheel with the clock seen from above; camber, top outboard, against it from behind. */
  const wayOf = ([what, wheel]) => ((what === "toe") === (wheel === 0) ? 1 : -1);
  const needle = (angle, limit, way, kind) => {
    const g = shape("g", { class: kind, "data-angle": angle.toFixed(4), transform: `rotate(${((way * angle * 70) / limit).toFixed(3)} 80 88)` });
    g.append(shape("path", { d: kind === "needle" ? "M80 88V18" : "M80 88V26" }));
    return g;
  };
  const dialOf = (dial, i, mine, base, limit) => {
    const [what, wheel] = dial, way = wayOf(dial);
    const svg = shape("svg", { viewBox: "-5 -8 170 126", role: "img", class: "dial " + kitClass(state.kit), "data-dial": `${what}-${wheel}`,
      "aria-label": `${wheel ? "right" : "left"} wheel, ${what === "toe" ? "toe from above" : "lean from behind"}: ${mine && mine[i] !== null ? signed(mine[i], 2) + " degrees" : "no result"}` });
    for (const part of [-1, -0.5, 0, 0.5, 1]) {
      const a = ((part * 70 - 90) * Math.PI) / 180, at = (r) => `${(80 + r * Math.cos(a)).toFixed(1)} ${(88 + r * Math.sin(a)).toFixed(1)}`;
      svg.append(shape("path", { class: "tick", d: `M${at(66)}L${at(72)}` }));
      if (part % 1 === 0) { const [x, y] = at(part ? 84 : 80).split(" "); svg.append(shape("text", { x, y: part ? Number(y) + 20 : y, "text-anchor": part < 0 ? "start" : part > 0 ? "end" : "middle" }, part ? signed(part * limit * way, limit < 1 ? 1 : 0) + "\u00b0" : "0")); }
    }
    const a = (d) => ((d - 90) * Math.PI) / 180;
    svg.append(shape("path", { class: "arc", d: `M${80 + 72 * Math.cos(a(-70))} ${88 + 72 * Math.sin(a(-70))}A72 72 0 0 1 ${80 + 72 * Math.cos(a(70))} ${88 + 72 * Math.sin(a(70))}` }));
    if (base && base[i] !== null && state.kit !== data.start.base) svg.append(needle(base[i], limit, way, "first-needle"));
    if (mine && mine[i] !== null) svg.append(needle(mine[i], limit, way, "needle"));
    svg.append(shape("text", { class: "read", x: 80, y: 110, "text-anchor": "middle" }, `${wheel ? "right" : "left"} ${what === "toe" ? "toe" : "lean"} ${mine && mine[i] !== null ? signed(mine[i], 2) + "\u00b0" : "\u2013"}`));
    return svg;
  };
  const drawDials = () => {
    const mine = anglesOf(state.kit), base = anglesOf(data.start.base), limit = limitOf();
    byId("dials").replaceChildren(...DIALS.map((dial, i) => dialOf(dial, i, mine, base, limit)));
    byId("dials").dataset.limit = limit;
  };

  /* ---- figures and shares ---- */

  const fillTable = (mine, base) => {
    for (const line of all("tr[data-figure]")) {
      const decimals = Number(line.dataset.decimals);
      [mine, base].forEach((s, i) => {
        if (!line.cells[i + 1]) return; /* one kit alone is not set beside itself */
        const has = s && typeof s[line.dataset.figure] === "number";
        line.cells[i + 1].textContent = has ? signed(s[line.dataset.figure], decimals) + line.dataset.unit : "\u2013";
      });
    }
    byId("state-kit").firstElementChild.textContent = byIndex(data.kits, state.kit).label;
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
    const line = element("li"), half = (50 * Math.abs(value)) / widest;
    const bar = shape("svg", { class: "bar", viewBox: "0 0 100 10", preserveAspectRatio: "none", "aria-hidden": "true" });
    bar.append(shape("path", { d: "M50 0V10" }), shape("rect", { class: value < 0 ? "out" : "in", x: value < 0 ? 50 - half : 50, y: 1, width: half, height: 8 }));
    line.append(element("bdi", {}, name), bar, element("span", { class: "value" }, signed(value, 2) + "\u00b0"));
    return line;
  };

  /* The bushes that matter most, what the wheel's travel does, and the rest in one. */
  const fillShares = (mine) => {
    const list = byId("shares");
    list.replaceChildren();
    if (!mine || !mine.shares) {
      list.appendChild(element("li")).textContent = mine ? data.words.shares_none : data.words.none;
      return;
    }
    const axle = byIndex(data.drawing.axles, state.axle), labels = [];
    for (const j of axle.joints) if (j.own) labels[j.joint] = j.label;
    const sorted = mine.shares.map((s, i) => ({ ...s, joint: labels[i] })).sort((a, b) => Math.abs(b.toe_deg) - Math.abs(a.toe_deg));
    const top = sorted.slice(0, 5).filter((s) => Math.abs(s.toe_deg) >= 0.0005);
    const rest = mine.toe_change_deg - mine.travel_toe_deg - top.reduce((sum, s) => sum + s.toe_deg, 0);
    const rows = [...top.map((s) => [s.joint, s.toe_deg]), [data.words.rest, rest], [data.words.travel, mine.travel_toe_deg]];
    const widest = Math.max(1e-9, ...rows.map((r) => Math.abs(r[1])));
    for (const [name, value] of rows) list.appendChild(shareRow(name, value, widest));
  };

  /* ---- hearing: noise in third-octaves, 25 to 315 Hz, each a sum of tones that fills its band and repeats ---- */

  const FIRST_BAND = 14, SECONDS = 2, RATE = 8000;
  const sound = { context: null, gains: [], volume: null, analyser: null };
  const spectrumOf = (kit, axle) => data.sound?.spectra.find((s) => s.kit === kit && s.axle === axle)?.force_N.slice(FIRST_BAND - 10);
  const rms = (values) => Math.sqrt(values.reduce((sum, v) => sum + v * v, 0));
  /* One level for all: the first kit's, lower where the loudest kit would be cut off. */
  const levelOf = (axle) => {
    const loudest = Math.max(...data.kits.map((k) => spectrumOf(k.index, axle)).filter(Boolean).map(rms)), first = rms(spectrumOf(data.start.base, axle));
    return Math.min(0.1, (0.22 * first) / loudest) / first;
  };
  /* Tones half a hertz apart, of one size and of phases that a fixed sequence gives: the same noise every time. */
  const bandNoise = (context, band) => {
    const n = SECONDS * RATE, buffer = context.createBuffer(1, n, RATE), out = buffer.getChannelData(0);
    const low = 10 ** ((band - 0.5) / 10), high = 10 ** ((band + 0.5) / 10), tones = [];
    for (let i = Math.ceil(low * SECONDS); i < high * SECONDS; i++) tones.push(i);
    let seed = 12345 + band;
    for (const tone of tones) {
      seed = (1103515245 * seed + 12345) % 2147483648;
      const phase = (2 * Math.PI * seed) / 2147483648, step = (2 * Math.PI * tone) / n, size = Math.sqrt(2 / tones.length);
      for (let i = 0; i < n; i++) out[i] += size * Math.cos(phase + step * i);
    }
    return buffer;
  };
  const buildSound = (context, kit, axle, out) => {
    const level = levelOf(axle);
    return spectrumOf(kit, axle).map((force, i) => {
      const source = context.createBufferSource(), gain = context.createGain();
      source.buffer = bandNoise(context, FIRST_BAND + i);
      source.loop = true;
      gain.gain.value = level * force;
      source.connect(gain).connect(out);
      source.start();
      return gain;
    });
  };
  /* For whoever wants to measure it: one kit's sound, as it is played at full volume. */
  document.renderSound = async (kit, axle, seconds) => {
    const context = new OfflineAudioContext(1, seconds * 48000, 48000);
    buildSound(context, kit, axle, context.destination);
    return (await context.startRendering()).getChannelData(0);
  };
  const steer = () => {
    if (!sound.context) return;
    const forces = spectrumOf(state.kit, state.axle), level = levelOf(state.axle), now = sound.context.currentTime;
    if (forces) sound.gains.forEach((gain, i) => { gain.gain.cancelScheduledValues(now); gain.gain.setTargetAtTime(level * forces[i], now, 0.04); });
  };
  const startSound = () => {
    const context = new AudioContext();
    Object.assign(sound, { context, volume: context.createGain(), analyser: context.createAnalyser() });
    sound.volume.gain.value = 0;
    sound.analyser.fftSize = 32768;
    sound.analyser.smoothingTimeConstant = 0.5;
    sound.gains = buildSound(context, state.kit, state.axle, sound.volume);
    sound.volume.connect(sound.analyser).connect(context.destination);
  };
  const playing = () => byId("play")?.getAttribute("aria-pressed") === "true";
  const setVolume = () => { if (sound.context) sound.volume.gain.setTargetAtTime(playing() ? Number(byId("volume").value) ** 2 : 0, sound.context.currentTime, 0.05); };

  const BARS = { left: 46, right: 650, top: 20, bottom: 190 };
  const drawSpectrum = () => {
    const box = byId("spectrum"), mine = spectrumOf(state.kit, state.axle), base = spectrumOf(data.start.base, state.axle);
    if (!box) return;
    byId("hearing").hidden = !mine || !base;
    if (!mine || !base) return;
    const dB = (f) => 20 * Math.log10(f / rms(base)), top = 5 * Math.ceil(Math.max(...data.kits.map((k) => spectrumOf(k.index, state.axle)).filter(Boolean).flat().map(dB)) / 5), low = top - 50;
    const svg = shape("svg", { viewBox: "0 0 660 242", role: "img", class: "spectrum " + kitClass(state.kit), "aria-label": "Force into the body by third-octave: the chosen kit and the first kit" });
    const y = (v) => BARS.bottom - (BARS.bottom - BARS.top) * Math.max(0, Math.min(1, (v - low) / (top - low))), width = (BARS.right - BARS.left) / mine.length;
    for (let v = low; v <= top; v += 10) svg.append(shape("path", { class: "rule", d: `M${BARS.left} ${y(v)}H${BARS.right}` }), shape("text", { x: BARS.left - 6, y: y(v) + 4, "text-anchor": "end" }, figure(v, 0)));
    mine.forEach((force, i) => {
      const x = BARS.left + i * width, hz = data.sound.hz[FIRST_BAND - 10 + i];
      svg.append(shape("rect", { class: "mine", "data-band": hz, "data-dB": (dB(force) - dB(base[i])).toFixed(2), x: x + 4, y: y(dB(force)), width: width - 8, height: BARS.bottom - y(dB(force)) }),
        shape("path", { class: "base", d: `M${x + 1} ${y(dB(base[i]))}h${width - 2}` }),
        shape("text", { x: x + width / 2, y: BARS.bottom + 20, "text-anchor": "middle" }, String(hz)));
    });
    svg.append(shape("text", { x: BARS.right, y: BARS.bottom + 46, "text-anchor": "end" }, "Hz; dB over the first kit's sum; line: the first kit"), shape("g", { class: "live" }));
    box.replaceChildren(svg);
    Object.assign(sound, { y, low, top, width });
    const more = 20 * Math.log10(rms(mine) / rms(base));
    byId("heard").textContent = `${byIndex(data.kits, state.kit).label}: ${signed(more, 1)} dB, ${byIndex(data.axles, state.axle).name} axle, 25 to 315 Hz`;
  };
  /* While it plays, what is played is measured and shown: a mark a band. */
  const follow = () => {
    const live = document.querySelector("#spectrum .live");
    if (!playing() || !live) { live?.replaceChildren(); return; }
    const bins = new Float32Array(sound.analyser.frequencyBinCount), hz = sound.context.sampleRate / sound.analyser.fftSize;
    sound.analyser.getFloatFrequencyData(bins);
    const loud = Number(byId("volume").value) ** 2, level = levelOf(state.axle) * rms(spectrumOf(data.start.base, state.axle));
    live.replaceChildren(...sound.gains.map((_, i) => {
      const n = FIRST_BAND + i, from = Math.ceil(10 ** ((n - 0.5) / 10) / hz), to = 10 ** ((n + 0.5) / 10) / hz;
      let power = 0;
      for (let k = from; k < to; k++) power += 10 ** (bins[k] / 10);
      /* Blackman's window spreads a tone over 1.73 bins; a line of the analyser is half its amplitude. */
      const now = 10 * Math.log10((2 * power) / 1.73 / (loud * level) ** 2 + 1e-12) + 7.54;
      return shape("circle", { cx: BARS.left + (i + 0.5) * sound.width, cy: sound.y(now), r: 4 });
    }));
    if (!still.matches) requestAnimationFrame(follow);
  };
  byId("play")?.addEventListener("click", () => {
    byId("play").setAttribute("aria-pressed", String(!playing()));
    byId("play").textContent = playing() ? "Stop" : "Play the chosen kit";
    if (playing() && !sound.context) startSound();
    sound.context?.resume();
    setVolume();
    steer();
    follow();
  });
  byId("volume")?.addEventListener("input", setVolume);

  /* ---- all of it, for the chosen kit, load and axle ---- */

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
      byId(key + "-shown").textContent = state[key].toFixed(2) + " g";
    }
  };
  const showCharts = () => {
    for (const chart of all("figure[data-axle]"))
      if (!document.body.hasAttribute("data-both")) chart.hidden = Number(chart.dataset.axle) !== state.axle;
  };

  const render = () => {
    const mine = shown(state.kit), base = shown(data.start.base), stage = byId("stage");
    for (let k = 0; k < 8; k++) stage.classList.toggle("k" + k, k === state.kit % 8);
    drawScene();
    drawDials();
    drawBush();
    fillTable(mine, base);
    fillShares(mine);
    drawSpectrum();
    steer();
    byId("state").textContent = sentence(mine);
    showCharts();
    press();
    showSliders();
  };

  const choose = (button) => {
    for (const key of ["kit", "load", "axle"])
      if (key in button.dataset) state[key] = Number(button.dataset[key]);
    if ("axle" in button.dataset) state.joint = null;
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

  /* ---- what the script adds to the page ---- */

  const FACTORS = [1, 2, 5, 10, 20, 50];
  const addViews = () => {
    const bar = element("div", { class: "view-bar", role: "group", "aria-label": "Seen from" });
    for (const [id, name] of [["behind", "From behind"], ["above", "From above"], ["side", "From the side"], ["corner", "Askew"]]) {
      const button = element("button", { type: "button", "data-view": id }, name);
      button.addEventListener("click", () => turnTo(...VIEWS[id]));
      bar.append(button);
    }
    const label = element("label", { for: "factor", class: "factor" }, "Give, exaggerated "), out = element("output", { id: "factor-shown", for: "factor" });
    const range = element("input", { type: "range", id: "factor", min: 0, max: FACTORS.length - 1, step: 1, value: Math.max(FACTORS.indexOf(state.factor), 0) });
    const tell = () => {
      state.factor = FACTORS[Number(range.value)];
      out.textContent = state.factor === 1 ? "as it is" : `${state.factor} times`;
      range.setAttribute("aria-valuetext", out.textContent);
    };
    range.addEventListener("input", () => { tell(); drawScene(); });
    tell();
    label.append(out, range);
    bar.append(label);
    const hand = document.querySelector("fieldset.sliders");
    byId("views").replaceChildren(scene, bar, ...(hand ? [hand] : []), element("div", { id: "dials", class: "dials" }));
    byId("stage").querySelector(".readings").prepend(element("div", { id: "bush", class: "bush", role: "status" }));
  };
  addViews();

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
  /* A card's kit is the one that is drawn. */
  for (const card of all("[data-card]")) card.addEventListener("click", () => choose({ dataset: { kit: card.dataset.card } }));

  /* ---- paper: folds open for it; one sheet may be printed alone ---- */

  let opened = [];
  const redraw = (onPaper) => { paper = onPaper; drawScene(); };
  addEventListener("resize", () => redraw(paper)); /* letters are larger on a telephone */
  addEventListener("beforeprint", () => { opened = all("details:not([open])"); for (const fold of opened) fold.open = true; redraw(true); });
  addEventListener("afterprint", () => {
    redraw(false);
    for (const fold of opened) fold.open = false;
    opened = [];
    delete document.body.dataset.printing;
    for (const e of all(".alone")) e.classList.remove("alone");
  });
  const printAlone = (id) => {
    document.body.dataset.printing = id;
    for (let e = byId(id); e !== document.body; e = e.parentElement) e.classList.add("alone");
    window.print();
  };
  for (const button of all("button[data-print]")) button.addEventListener("click", () => printAlone(button.dataset.print));

  /* On a narrow screen each cell of the table carries the name of its column. */
  for (const table of all("table.glance")) {
    const names = all("thead th", table).map((th) => th.textContent);
    for (const line of all("tbody tr", table)) all("td", line).forEach((td, i) => { td.dataset.name = names[i + 1]; });
  }
  const start = byIndex(data.loads, state.load);
  if (start.slides) Object.assign(state, { brake: start.brake_g, lateral: start.lateral_g });
  render();
})();
