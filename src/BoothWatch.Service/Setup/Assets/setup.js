// The setup page. Everything on it comes from /api/setup and /api/alerts; the server decides what may be changed.
"use strict";

const TITLES = { sensors: "Find the sensors", booth: "Name the booth", materials: "Choose what is in the cup", light: "Test the light, pin by pin", alerts: "Test the alerts" };
const LAMPS = { green: "Green lamp", yellow: "Yellow lamp", red: "Red lamp", buzzer: "Buzzer" };
const fields = [...document.querySelectorAll("[data-key]")];
const outcomes = new Map();
const LOOK_MS = 5000;
let state = null;

const shown = value => value === null ? "" : String(value);
const isLocked = () => Boolean(state.file.refusal) || state.file.errors.length > 0;
const settingOf = key => state.settings.find(setting => setting.key === key);

async function ask(address, body) {
  const answer = await request(address, body);
  if (answer.status === 401) { await boothwatch.ensureMayRead(); }
  return answer;
}

function stepLine(step, number) {
  const item = make("li");
  item.dataset.done = String(step.done);
  const link = make("a");
  link.href = `#${step.id}`;
  const mark = make("span", step.done ? "✓" : "", "mark");
  mark.setAttribute("aria-hidden", "true");
  link.append(mark, make("b", `${number}. ${TITLES[step.id]}${step.done ? ": done" : ""}`), make("span", step.state, "state"));
  item.append(link);
  return item;
}

function showFile() {
  const file = state.file;
  byId("filePath").textContent = file.path ?? "no file: built-in defaults";
  byId("fileNote").textContent = file.refusal
    ? `It cannot be changed from here: ${file.refusal}. ${file.unlocking.length ? "That is the safer way; these lines allow it while you set up:" : "Edit it by hand, or see docs/setup.md."}`
    : `This is the file that is changed here, in place, with its comments. The last versions stay beside it.${file.isBesideProgram ? " It is the copy beside the program, and an update or a build replaces it: better start with --config and a file of your own." : ""}`;
  byId("unlock").hidden = !file.unlocking.length;
  byId("unlockLines").textContent = file.unlocking.join("\n");
  byId("fileErrors").hidden = !file.errors.length;
  byId("fileErrors").replaceChildren(...file.errors.map(error => make("li", error)));
  byId("restart").hidden = !state.waiting.length;
  byId("restart").textContent = `Changed in the file, and in effect at the next start: ${state.waiting.join(", ")}. To start anew: ${state.restart}. The light shows wait meanwhile.`;
  byId("undoBox").hidden = !file.undo || Boolean(file.refusal);
  if (file.undo) { byId("undoText").textContent = `The version before, of ${when(file.undo.time)}, differs in: ${file.undo.changes.join("; ")}.`; }
}

// What somebody has typed and not saved yet stays, but for the form that was just saved.
function showForms(saved) {
  for (const field of fields) {
    const setting = settingOf(field.dataset.key);
    const typed = field.dataset.was !== undefined && field.value !== field.dataset.was && !(saved && saved.contains(field)) ? field.value : null;
    if (field.dataset.choices) {
      const options = state.choices[field.dataset.choices].map(choice => new Option(choice, choice));
      if (field.dataset.empty) { options.unshift(new Option(field.dataset.empty, "")); }
      field.replaceChildren(...options);
    }
    field.value = shown(setting.value);
    field.dataset.was = field.value;
    if (typed !== null) { field.value = typed; }
    field.disabled = setting.fromEnvironment;
    field.title = setting.fromEnvironment ? "An environment variable sets this, and wins over the file." : "";
  }
  for (const button of document.querySelectorAll("#boothForm [type=submit], #materialsForm [type=submit]")) { button.disabled = isLocked(); }
}

function askOf(lamp) {
  const time = when(lamp.trial.time);
  return lamp.trial.fault ? `Could not be driven at ${time}: ${lamp.trial.fault}`
    : lamp.id === "buzzer" ? `Sounded at ${time}. Did you hear it?`
    : `Lit at ${time}. Did you see it, and no other?`;
}

function lampLine(lamp) {
  const item = make("li");
  const words = make("div");
  words.append(make("b", LAMPS[lamp.id], lamp.id === "buzzer" ? "" : `lamp ${lamp.id}`), make("span", ` GPIO ${lamp.pin}, ${lamp.shows}`));
  words.append(make("span", lamp.confirmed ? `seen ${when(lamp.confirmed)}` : "not seen yet", `tag ${lamp.confirmed ? "good" : ""}`));
  if (lamp.trial && !lamp.confirmed) { words.append(make("p", askOf(lamp), lamp.trial.fault ? "bad" : "asks")); }
  const button = make("button", lamp.id === "buzzer" ? "I heard it" : "I saw it", lamp.trial && !lamp.trial.fault && !lamp.confirmed ? "main" : "");
  button.type = "button";
  button.disabled = state.lightSource !== "real";
  button.setAttribute("aria-label", `${LAMPS[lamp.id]}: ${button.textContent}, and no other output`);
  button.addEventListener("click", async () => {
    await confirm(lamp.id, byId("lampOutcome"));
    document.querySelector(`#lamps [data-id="${lamp.id}"] button`)?.focus();
  });
  item.dataset.id = lamp.id;
  item.append(words, button);
  return item;
}

function show(next, saved) {
  state = next;
  byId("demo").hidden = !state.isDemo;
  const left = state.steps.filter(step => !step.done).length;
  byId("progress").textContent = left ? `${state.steps.length - left} of ${state.steps.length} steps are done.` : "All steps are done.";
  byId("steps").replaceChildren(...state.steps.map((step, index) => stepLine(step, index + 1)));
  showFile();
  showForms(saved);
  showSensors();
  byId("lampsFirst").textContent = state.lampsFirst;
  byId("lampCommands").textContent = state.lampCommands.join("\n");
  const at = document.activeElement?.closest("#lamps li")?.dataset.id;
  byId("lamps").replaceChildren(...state.lamps.map(lampLine));
  if (at) { document.querySelector(`#lamps [data-id="${at}"] button`)?.focus(); }
  if (state.lightSource !== "real") { byId("lampOutcome").textContent = "light:source is emulated: there is no lamp to see. Wire the light, choose real lamps in step 1, and start anew."; }
}

async function refresh() {
  const { json, problem } = await ask("/api/setup");
  say(problem ?? "");
  if (json) { show(json); }
}

// The lamps are tried with the service stopped: the page looks again until somebody has said what was seen.
async function lookAgain() {
  if (document.hidden || !state || state.steps.find(step => step.id === "light").done) { return; }
  const { json } = await request("/api/setup");
  if (json && json.lamps.some((lamp, index) => lamp.trial?.time !== state.lamps[index]?.trial?.time)) {
    show(json);
    say("");
  }
}

async function copy(lines, outcome) {
  try {
    await navigator.clipboard.writeText(lines.textContent); // only where the page is trusted: https, or this machine
    outcome.textContent = "Copied.";
  } catch {
    getSelection().selectAllChildren(lines);
    outcome.textContent = "Selected. Copy it now, with Ctrl-C or a long press.";
  }
}

async function confirm(id, outcome) {
  const { json, problem } = await ask("/api/setup/confirm", { id });
  if (json) { show(json); }
  outcome.textContent = problem ?? "Noted.";
}

// A number as people type it, with a comma too; what is no number goes to the server as it is, which says what it wants.
function valueOf(field) {
  const text = field.value.trim();
  const isNumber = field.matches("[inputmode]");
  if (text === "" && (isNumber || field.dataset.empty)) { return null; }
  const number = Number(text.replace(",", "."));
  return isNumber && Number.isFinite(number) ? number : text;
}

async function save(event) {
  event.preventDefault();
  const form = event.currentTarget;
  const [problems, outcome] = [form.querySelector(".problems"), form.querySelector(".outcome")];
  const own = fields.filter(field => form.contains(field) && !field.disabled);
  const values = Object.fromEntries(own.map(field => [field.dataset.key, valueOf(field)]).filter(([key, value]) => value !== settingOf(key).value));
  problems.hidden = true;
  outcome.textContent = "";
  if (!Object.keys(values).length) {
    outcome.textContent = "Nothing was changed.";
    return;
  }
  const { json, errors } = await ask("/api/setup/settings", { version: state.file.version, values });
  if (json) {
    show(json, form);
    outcome.textContent = `Written to ${json.file.path}. It takes effect at the next start: ${json.restart}`;
  } else {
    problems.replaceChildren(...errors.map(error => make("li", error)));
    problems.hidden = false;
  }
}

async function undo() {
  byId("fileOutcome").textContent = "";
  const { json, problem } = await ask("/api/setup/undo", { version: state.file.version });
  if (json) {
    show(json, document);
    preview();
  }
  byId("fileOutcome").textContent = problem ?? "The earlier version is back. It takes effect at the next start.";
}

function channelLine(channel) {
  const item = make("li");
  const words = make("div");
  words.append(make("b", CHANNELS[channel.name] ?? channel.name), make("span", channel.on ? "on" : "off", `tag ${channel.on ? "good" : ""}`));
  words.append(make("p", channel.on ? (channel.lastSuccess ? `last handed over ${when(channel.lastSuccess)}` : "nothing handed over yet") : channel.offBecause, "small"));
  if (outcomes.has(channel.name)) { words.append(make("p", outcomes.get(channel.name))); }
  const button = make("button", "Test");
  button.type = "button";
  button.disabled = !channel.on;
  button.setAttribute("aria-label", `Test: ${CHANNELS[channel.name] ?? channel.name}`);
  button.addEventListener("click", async () => {
    button.disabled = true;
    const { json, problem } = await ask(`/api/alerts/test/${channel.name}`, {});
    outcomes.set(channel.name, problem ?? (json.error ? `Failed: ${json.error}` : `Handed over to ${json.taken}. Look whether it arrives.`));
    await Promise.all([channels(), refresh()]);
    document.querySelector(`#channels [data-id="${channel.name}"] button`)?.focus();
  });
  item.dataset.id = channel.name;
  item.append(words, button);
  return item;
}

async function channels() {
  const { json, problem } = await ask("/api/alerts");
  byId("channels").replaceChildren(...(json ? json.channels.map(channelLine) : [make("li", problem)]));
}

for (const form of [byId("boothForm"), byId("materialsForm")]) { form.addEventListener("submit", save); }
for (const button of document.querySelectorAll("[data-confirm]")) {
  button.addEventListener("click", () => confirm(button.dataset.confirm, button.closest("form").querySelector(".outcome")));
}
byId("undo").addEventListener("click", undo);
byId("copyLamps").addEventListener("click", () => copy(byId("lampCommands"), byId("copyOutcome")));
byId("copyUnlock").addEventListener("click", () => copy(byId("unlockLines"), byId("unlockOutcome")));
document.addEventListener("visibilitychange", lookAgain);
setInterval(lookAgain, LOOK_MS);
refresh();
channels();
