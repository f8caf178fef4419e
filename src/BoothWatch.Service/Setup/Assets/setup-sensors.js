// The first step of the setup page: what is on the buses, what each part is to measure, and the exact change of the file before it is written.
// It works on the state of setup.js, which comes after it.
"use strict";

const ROLES = {
  boothAir: "Air in the booth", boothAirCheck: "Spare for the air in the booth", intakeAir: "Intake air", piece: "Piece", exhaust: "Proof of exhaust", filter: "Pressure drop of the filter",
};
const SOURCES = { real: "real lamps", emulated: "no lamps (emulated)" };
const places = new Map(); // what each found part is to measure, where a person or the first guess said so
const others = new Map(); // what a person chose for a role that no found part fills
const sensorsForm = byId("sensorsForm");
let found = [];
let asked = 0;

const placeOf = line => `${line.source} ${line.bus} ${line.address} ${line.part}`;
const isAt = (role, line) => role.part === line.part && role.source === line.source && role.bus === line.bus && role.address === line.address;
const busOf = line => line.source === "real" ? `/dev/i2c-${line.bus}` : `emulated bus ${line.bus}`;

// Real parts where there are any: beside them emulated ones would measure a script.
function usable() {
  const known = found.filter(line => line.roles.length);
  const real = known.filter(line => line.source === "real");
  return real.length ? real : known;
}

// What the file says of a part; else the first of its roles that no other part has.
function guess() {
  places.clear();
  for (const line of usable()) {
    const role = state.roles.find(configured => isAt(configured, line));
    if (role) { places.set(placeOf(line), role.name); }
  }
  for (const line of usable().filter(part => part.source === "real" && !places.has(placeOf(part)))) {
    const taken = [...places.values(), ...state.roles.filter(role => role.isEmulated === false).map(role => role.name)];
    places.set(placeOf(line), line.roles.find(role => !taken.includes(role)) ?? "");
  }
}

function select(id, words, options, value, onChange) {
  const field = make("div", undefined, "field");
  const label = make("label", words);
  const list = make("select");
  list.id = label.htmlFor = id;
  list.append(...options.map(([key, text]) => new Option(text, key)));
  list.value = value;
  list.addEventListener("change", () => onChange(list.value));
  field.append(label, list);
  return field;
}

function foundLine(line) {
  const item = make("li");
  const head = make("div");
  head.append(make("b", `${line.part ?? "unknown"} at ${line.address}`), document.createTextNode(` on ${busOf(line)}`));
  head.append(make("span", line.configuredAs ?? "not configured", `tag ${!line.isGood ? "bad" : line.configuredAs ? "good" : ""}`));
  item.append(head, make("p", line.finding, "small"));
  if (usable().includes(line) && !isLocked()) {
    const options = [["", "nothing"], ...line.roles.map(role => [role, ROLES[role]])];
    item.append(select(`measures-${found.indexOf(line)}`, "It measures", options, places.get(placeOf(line)) ?? "", role => {
      places.set(placeOf(line), role);
      showRest();
      preview();
    }));
  } else if (line.line) {
    item.append(make("p", "To use it, put this line into the section sensors of the file, in the place of the one that is there:", "small"), make("code", line.line));
  }
  return item;
}

function saysNow(role) {
  const place = role.address ? ` at ${role.address}` : role.part === "contact" ? ` at GPIO ${role.pin}` : "";
  return role.part === "none" ? "not fitted" : role.part === "typed" ? "measured by hand" : `${role.part}${place}, ${role.source}`;
}

const isReal = () => usable().some(line => line.source === "real" && places.get(placeOf(line)));
const isProving = () => (others.get("proving") ?? (state.fileProving ? "yes" : "no")) === "yes";
const freeRoles = () => state.roles.filter(role => ![...places.values()].includes(role.name));

// A role that the scripted shop fills gives way where parts are real, unless parts are still being proved.
function usual(role) {
  const mayStay = role.isEmulated !== true || !isReal() || isProving();
  return mayStay ? "keep" : role.name === "exhaust" ? "contact" : role.name === "piece" ? "typed" : "none";
}

function showRest() {
  const rows = freeRoles().map(role => {
    const options = [["keep", `as the file says: ${saysNow(role)}`]];
    if (role.name === "exhaust" && !(role.part === "contact" && role.source === "real")) { options.push(["contact", `contact at GPIO ${role.pin}, real`]); }
    if (role.name === "piece" && role.part !== "typed") { options.push(["typed", "measured by hand and typed in"]); }
    if (role.part !== "none") { options.push(["none", "not fitted"]); }
    const chosen = others.get(role.name);
    const value = options.some(([key]) => key === chosen) ? chosen : usual(role);
    return select(`rest-${role.name}`, ROLES[role.name], options, value, key => choose(role.name, key));
  });
  rows.push(select("rest-light", "Booth light", Object.entries(SOURCES), others.get("light") ?? state.fileLightSource, key => choose("light", key)));
  rows.push(select("rest-proving", "Real and emulated parts", [["no", "never side by side"], ["yes", "side by side while parts are proved: the verdict stays at wait"]],
    isProving() ? "yes" : "no", key => choose("proving", key)));
  const focus = document.activeElement?.closest("#rest select")?.id;
  byId("rest").replaceChildren(...rows);
  if (focus) { byId(focus)?.focus(); }
}

function choose(name, key) {
  others.set(name, key);
  showRest();
  preview();
}

// What is asked of the server: one entry a role, without those that stay as they are.
function choices() {
  const parts = usable().filter(line => places.get(placeOf(line))).map(line => ({ role: places.get(placeOf(line)), part: line.part, source: line.source, bus: line.bus, address: line.address }));
  const rest = freeRoles().map(role => {
    const chosen = others.get(role.name) ?? usual(role);
    return chosen === "keep" ? null
      : chosen === "contact" ? { role: role.name, part: "contact", source: "real", pin: role.pin }
      : { role: role.name, part: chosen };
  });
  return {
    version: state.file.version,
    sensors: [...parts, ...rest.filter(Boolean)],
    light: others.get("light") ?? state.fileLightSource,
    proving: isProving(),
  };
}

function twice() {
  const roles = [...places.values()].filter(Boolean);
  const role = roles.find((name, index) => roles.indexOf(name) !== index);
  return role ? [`Two parts cannot both measure: ${ROLES[role]}. Choose something else for one of them.`] : [];
}

function showPlan(changes, notes, errors) {
  const problems = sensorsForm.querySelector(".problems");
  byId("sensorChanges").replaceChildren(...(changes.length ? changes.map(change => {
    const item = make("li");
    item.append(make("code", change.key), " ", make("span", `from ${change.before} to`), " ", make("b", change.after));
    return item;
  }) : [make("li", errors.length ? "Nothing: see below." : "Nothing: the file says so already.")]));
  byId("sensorNotes").replaceChildren(...notes.map(note => make("li", note)));
  problems.replaceChildren(...errors.map(error => make("li", error)));
  problems.hidden = !errors.length;
  sensorsForm.querySelector("[type=submit]").disabled = errors.length > 0 || !changes.length || isLocked();
}

async function preview() {
  if (sensorsForm.hidden || !state) { return; }
  const turn = ++asked;
  const errors = twice();
  if (errors.length) {
    showPlan([], [], errors);
    return;
  }
  const answer = await ask("/api/setup/sensors/preview", choices());
  if (turn !== asked) { return; }
  showPlan(answer.json?.changes ?? [], answer.json?.notes ?? [], answer.json?.errors ?? answer.errors);
}

async function writeSensors(event) {
  event.preventDefault();
  const outcome = sensorsForm.querySelector(".outcome");
  outcome.textContent = "";
  asked++;
  const { json, errors } = await ask("/api/setup/sensors", choices());
  if (json) {
    others.clear();
    show(json);
    outcome.textContent = `Written to ${json.file.path}. It takes effect at the next start: ${json.restart}`;
  } else {
    await refresh();
    outcome.textContent = errors.join(" ");
  }
  await preview();
}

// With the file, what it says of each role and whether it may be changed have changed as well.
function showSensors() {
  byId("found").replaceChildren(...found.map(foundLine));
  if (!sensorsForm.hidden) { showRest(); }
}

async function scan() {
  byId("scan").disabled = true;
  byId("scanOutcome").textContent = "Looking.";
  const { json, problem } = await ask("/api/setup/scan", {});
  if (!state) { await refresh(); }
  byId("scan").disabled = false;
  byId("scan").focus();
  if (!json || !state) {
    byId("scanOutcome").textContent = problem;
    return;
  }
  const fresh = json.lines.filter(line => line.line).length;
  byId("scanOutcome").textContent = [
    `Looked at ${json.buses.join(", ") || "no bus: this machine has none"}. ${fresh ? `${fresh} not configured yet` : "Nothing new"}; ${json.silent} other places are silent.`,
    ...json.troubles,
  ].join(" ");
  found = json.lines;
  guess();
  sensorsForm.hidden = isLocked();
  showSensors();
  await preview();
}

byId("scan").addEventListener("click", scan);
sensorsForm.addEventListener("submit", writeSensors);
