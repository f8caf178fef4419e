// The page of the sensor checks. Everything on it comes from /api/checks; the server decides what is settled and what counts.
"use strict";

const OFTEN_MS = 2000;
const SELDOM_MS = 15000;
const cards = new Map();
let timer = 0;

const percent = value => value === null ? "–" : `${value.toFixed(1)} %`;
const signed = value => `${value < 0 ? "−" : "+"}${Math.abs(value).toFixed(1)} %`;
const put = (part, text) => { if (part.textContent !== text) { part.textContent = text; } };

function resultLine(result) {
  const item = make("li");
  const rest = result.words.slice(result.words.indexOf("±"));
  item.append(make("b", signed(result.deviationPct)), make("span", `${rest}. It read ${percent(result.readPct)}, the air had ${percent(result.referencePct)}.`));
  return item;
}

function pastLine(past) {
  const item = make("li");
  item.append(make("b", when(past.begun)), make("span", past.isCancelled ? "cancelled, does not count" : "", past.isCancelled ? "tag" : ""));
  for (const result of past.results) { item.append(make("p", result.words, "small")); }
  return item;
}

function saltChoice(sensor, salt, chosen) {
  const label = make("label");
  const input = make("input");
  input.type = "radio";
  input.name = `salt-${sensor.name}`;
  input.value = salt.id;
  input.checked = chosen;
  const words = make("span", salt.name[0].toUpperCase() + salt.name.slice(1));
  words.append(make("small", `${salt.formula}, ${percent(salt.humidityPct)} at 25 °C`));
  label.append(input, words);
  return label;
}

// A card is made once and filled again and again, so that the focus and what is chosen stay.
function cardOf(sensor, salts) {
  if (cards.has(sensor.name)) { return cards.get(sensor.name); }
  const root = byId("sensor").content.firstElementChild.cloneNode(true);
  const parts = Object.fromEntries([...root.querySelectorAll("[data-part]")].map(part => [part.dataset.part, part]));
  const card = { root, parts, shown: "" };
  root.dataset.sensor = sensor.name;
  parts.name.id = `name-${sensor.name}`;
  root.setAttribute("aria-labelledby", parts.name.id);
  parts.salts.replaceChildren(...salts.map(salt => saltChoice(sensor, salt, salt.id === "sodium-chloride")));
  for (const button of root.querySelectorAll("[data-step]")) { button.addEventListener("click", () => step(sensor.name, button)); }
  byId("sensors").append(root);
  cards.set(sensor.name, card);
  return card;
}

function bodyOf(card, name) {
  switch (name) {
    case "jar": return { salt: card.root.querySelector(".salts input:checked")?.value ?? "" };
    case "cancel": return { cancelled: true };
    case "certain": return { certain: true };
    default: return {};
  }
}

async function step(sensor, button) {
  const { step: name } = button.dataset;
  const card = cards.get(sensor);
  const address = ["cancel", "certain"].includes(name) ? "back" : name;
  button.disabled = true;
  const answer = await askOrSay(`/api/checks/${encodeURIComponent(sensor)}/${address}`, bodyOf(card, name));
  button.disabled = false;
  if (!answer) { return; }
  show(answer);

  // What was pressed may be gone; the next thing to do, or else the heading, takes the focus.
  if (!button.checkVisibility()) {
    const next = [...card.root.querySelectorAll("button.main")].find(other => other.checkVisibility() && !other.disabled) ?? card.parts.name;
    next.tabIndex = next === card.parts.name ? -1 : 0;
    next.focus();
  }
}

function settlingWords(running) {
  if (running.stage === "begun") { return ""; }
  if (running.readsAsInJar) { return "Not used yet: it still reads what the jar gives."; }
  if (running.stage === "returning") { return running.settled ? "Settled: it is used again in a moment." : `Not used yet: ${running.notYet}.`; }
  if (running.hasResult) { return "The result is taken. Another salt, or back to its place?"; }
  return running.settled ? "Settled." : `Not settled yet: ${running.notYet}.`;
}

function showRunning(parts, running, salts) {
  parts.guide.hidden = !running;
  parts.idle.hidden = Boolean(running);
  if (!running) { return; }
  const salt = salts.find(known => known.id === running.salt);
  put(parts.held, `Being checked since ${when(running.since)}. ${running.spareCarriesOn ? "The second sensor carries on alone meanwhile." : "Until it is back and has settled, the verdict is wait where this sensor counts."}`);
  put(parts.read, percent(running.readPct));
  put(parts.temperature, running.readTemperature ? `at ${running.readTemperature}` : "no good reading");
  parts.referenceBox.hidden = running.referencePct === null;
  put(parts.reference, percent(running.referencePct));
  put(parts.salt, salt ? salt.name : "");
  put(parts.settling, settlingWords(running));
  parts.settling.dataset.settled = String(running.settled && !running.hasResult);
  parts.jarStep.hidden = !(running.stage === "begun" || (running.stage === "in-jar" && running.hasResult));
  put(parts.jarTitle, running.stage === "begun" ? "Now the sensor may go into the jar" : "Another salt");
  parts.resultStep.hidden = running.stage !== "in-jar" || running.hasResult;
  parts.resultStep.querySelector("button").disabled = !running.settled;
  parts.certainStep.hidden = !running.readsAsInJar;
  parts.backStep.hidden = running.stage === "returning";
  put(parts.backTitle, running.results ? "Done?" : "Not now after all?");
  parts.cancel.hidden = !running.results;
}

function showSensor(sensor, answer) {
  const card = cardOf(sensor, answer.salts);
  const { parts } = card;
  put(parts.name, sensor.name);
  put(parts.description, sensor.description);
  put(parts.headline, sensor.headline);
  parts.outcome.dataset.outcome = sensor.outcome ?? "none";
  const shown = JSON.stringify([sensor.last, sensor.words, sensor.past]);
  if (shown !== card.shown) {
    card.shown = shown;
    parts.last.replaceChildren(...sensor.last.map(resultLine));
    parts.words.replaceChildren(...sensor.words.map(text => make("p", text)));
    parts.past.replaceChildren(...sensor.past.map(pastLine));
    parts.pastBox.hidden = !sensor.past.length;
  }
  showRunning(parts, sensor.running, answer.salts);
}

function show(answer) {
  byId("demo").hidden = !answer.isDemo;
  put(byId("interval"), String(answer.intervalMonths));
  put(byId("jarWords"), answer.jarWords);
  byId("trouble").hidden = !answer.trouble;
  put(byId("trouble"), answer.trouble ? `Past checks are not known: ${answer.trouble}` : "");
  if (!answer.sensors.length) { byId("sensors").replaceChildren(make("p", "No sensor that measures humidity is configured.", "card")); }
  for (const sensor of answer.sensors) { showSensor(sensor, answer); }
  clearTimeout(timer);
  timer = setTimeout(refresh, answer.sensors.some(sensor => sensor.running) ? OFTEN_MS : SELDOM_MS);
}

async function refresh() {
  const { json, problem, status } = await request("/api/checks");
  if (status === 401) { await boothwatch.ensureMayRead(); }
  say(problem ?? "");
  if (json) {
    show(json);
  } else {
    clearTimeout(timer);
    timer = setTimeout(refresh, SELDOM_MS);
  }
}

refresh();
