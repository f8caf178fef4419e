// Asks the model on this machine what it says of the air and the coat that the sliders stand at.
// The question is the address of the page: its parameters are those of /api/what-if.
"use strict";

const form = byId("asked");
const field = form.elements;
const icons = { spray: "/icon-spray.svg", "slow down": "/icon-slow-down.svg", wait: "/icon-wait.svg" };
const MICROMETRE_PER_MIL = 25.4;

let choices = null;
let asking = false;
let askAgain = false;

const inFahrenheit = () => choices.temperatureUnit === "F";
const degrees = c => inFahrenheit() ? c * 1.8 + 32 : c;
const span = c => inFahrenheit() ? c * 1.8 : c;
const unit = () => `°${choices.temperatureUnit}`;
const minus = text => text.replace("-", "−");
const number = (value, digits) => minus(value.toFixed(digits));
const known = (value, show) => value === null || value === undefined ? "–" : show(value);

function fillSelect(select, values, chosen) {
  select.replaceChildren(...values.map(value => new Option(value, value, value === chosen, value === chosen)));
}

function prepare() {
  for (const name of ["temperature", "piece"]) {
    field[name].min = Math.round(degrees(0));
    field[name].max = Math.round(degrees(40));
    field[name].step = inFahrenheit() ? 1 : 0.5;
  }
  fillSelect(field.coat, choices.kinds.map(kind => kind.kind), choices.kind);
  fillSelect(field.thinnerMaterial, choices.thinners, choices.thinner);
  fillSelect(field.retarderMaterial, choices.retarders.map(retarder => retarder.id), choices.retarder);
  fillSelect(field.substrate, choices.substrates, choices.substrate);
  field.temperature.value = degrees(22);
  field.humidity.value = 55;
  field.piece.value = degrees(22);
  field.pieceAsAir.checked = true;
  field.airSpeed.value = choices.airSpeedMPerS;
  field.retarderAdvised.checked = true;
  field.retarder.value = 0;
  takeKind();
}

// A kind of coat brings its usual mix along.
function takeKind() {
  const kind = choices.kinds.find(one => one.kind === field.coat.value);
  field.thinner.value = kind.thinnerParts / kind.lacquerParts;
  field.wetFilm.value = kind.wetFilmUm;
}

function limitRetarder() {
  const retarder = choices.retarders.find(one => one.id === field.retarderMaterial.value);
  field.retarder.max = retarder.highestPct;
}

function question() {
  const asked = new URLSearchParams();
  asked.set("temperature", field.temperature.value + choices.temperatureUnit);
  asked.set("humidity", field.humidity.value);
  if (!field.pieceAsAir.checked) { asked.set("piece", field.piece.value + choices.temperatureUnit); }
  asked.set("air-speed", field.airSpeed.value);
  asked.set("coat", field.coat.value);
  asked.set("lacquer", "1");
  asked.set("thinner", field.thinner.value);
  asked.set("thinner-material", field.thinnerMaterial.value);
  if (!field.retarderAdvised.checked) { asked.set("retarder", field.retarder.value); }
  asked.set("retarder-material", field.retarderMaterial.value);
  asked.set("wet-film", field.wetFilm.value);
  asked.set("substrate", field.substrate.value);
  return asked;
}

// A link may come from a shop with the other unit.
function takeTemperature(name, text) {
  const match = /^(-?[0-9.]+)([CF]?)$/i.exec(text ?? "");
  if (!match) { return false; }
  const c = match[2].toUpperCase() === "F" ? (match[1] - 32) / 1.8 : Number(match[1]);
  field[name].value = degrees(c);
  return true;
}

function takeQuestion(asked) {
  const take = (name, key) => { if (asked.has(key)) { field[name].value = asked.get(key); } };
  take("coat", "coat");
  takeKind();
  takeTemperature("temperature", asked.get("temperature"));
  field.pieceAsAir.checked = !takeTemperature("piece", asked.get("piece"));
  for (const [name, key] of [["humidity", "humidity"], ["airSpeed", "air-speed"], ["thinner", "thinner"], ["thinnerMaterial", "thinner-material"],
    ["retarderMaterial", "retarder-material"], ["wetFilm", "wet-film"], ["substrate", "substrate"]]) { take(name, key); }
  limitRetarder();
  field.retarderAdvised.checked = !asked.has("retarder");
  take("retarder", "retarder");
}

async function takeBooth() {
  const answer = await fetch("/api/now");
  const now = answer.ok ? await answer.json() : null;
  if (!now?.air || now.stale) {
    say("The air of the booth is not known now; the sliders stay where they are.");
    return;
  }
  say("");
  field.temperature.value = degrees(now.air.temperatureC);
  field.humidity.value = now.air.relativeHumidityPct;
  const piece = now.readings.find(reading => reading.quantity === "piece-temperature" && reading.value !== null);
  field.pieceAsAir.checked = !piece;
  if (piece) { field.piece.value = degrees(piece.value); }
}

function label() {
  limitRetarder();
  if (field.pieceAsAir.checked) { field.piece.value = field.temperature.value; }
  field.piece.disabled = field.pieceAsAir.checked;
  field.retarder.disabled = field.retarderAdvised.checked;
  const say = (name, text) => {
    byId(name + "Out").textContent = text;
    field[name].setAttribute("aria-valuetext", text);
  };
  say("temperature", `${minus(field.temperature.value)} ${unit()}`);
  say("humidity", `${field.humidity.value} %`);
  say("piece", `${minus(field.piece.value)} ${unit()}`);
  say("airSpeed", `${number(Number(field.airSpeed.value), 1)} m/s`);
  say("thinner", `${Number(field.thinner.value)} parts`);
  say("retarder", field.retarderAdvised.checked ? "as advised" : `${field.retarder.value} %`);
  say("wetFilm", inFahrenheit() ? `${(field.wetFilm.value / MICROMETRE_PER_MIL).toFixed(1)} mil` : `${field.wetFilm.value} µm`);
}

function show(reply) {
  const first = reply.reasons[0];
  showVerdict(reply.verdict);
  byId("finding").textContent = first.finding;
  byId("action").textContent = first.action;
  byId("further").replaceChildren(...reply.reasons.slice(1).map(reason => {
    const li = document.createElement("li");
    li.textContent = `${reason.finding}: ${reason.action}`;
    return li;
  }));
  const advised = reply.retarderPct;
  byId("retarder").textContent = advised === null ? "none serves" : `${number(advised, 1).replace(".0", "")} %`;
  byId("retarderMl").textContent = advised === null ? "" : `${Math.round(reply.retarderMl)} mL in ${reply.inputs.cupMl} mL`;
  byId("margin").textContent = known(reply.blushMarginC, value => `${number(span(value), 1)} ${unit()}`);
  byId("marginUncertainty").textContent = known(reply.marginUncertaintyC, value => `± ${number(span(value), 1)} ${unit()}${figuresFor(reply)}`);
  byId("dewPoint").textContent = `${number(degrees(reply.dewPointC), 1)} ${unit()}`;
  byId("lowest").textContent = known(reply.lowestFilmTemperatureC, value => `${number(degrees(value), 1)} ${unit()}`);
  byId("set").textContent = known(reply.timeToSetS, value => value < 120 ? `${Math.round(value)} s` : `${(value / 60).toFixed(1)} min`);
  byId("water").textContent = known(reply.waterAtSetGPerM2, value => value < 0.05 ? "no water in it" : `${value.toFixed(1)} g/m² of water in it`);
  byId("critical").textContent = known(reply.criticalHumidityPct, value => `${Math.round(value)} %`);
  byId("briefText").textContent = `What if: ${reply.verdict}, retarder ${byId("retarder").textContent}, margin ${byId("margin").textContent}`;
  showScale(reply.inputs.relativeHumidityPct, reply.criticalHumidityPct);
}

function showVerdict(word) {
  byId("answer").dataset.verdict = word.replace(" ", "-");
  byId("word").textContent = word;
  byId("shape").src = icons[word];
  byId("briefShape").src = icons[word];
}

function figuresFor(reply) {
  return reply.figuresForRetarderPct === null ? "" : ` at ${number(reply.figuresForRetarderPct, 1).replace(".0", "")} % retarder`;
}

function showScale(humidityPct, criticalPct) {
  const scale = byId("scale");
  scale.classList.toggle("unknown", criticalPct === null);
  const holds = criticalPct ?? 0;
  scale.querySelector(".holds").setAttribute("width", Math.min(holds, 100));
  scale.querySelector(".blushes").setAttribute("x", Math.min(holds, 100));
  scale.querySelector(".blushes").setAttribute("width", Math.max(100 - holds, 0));
  scale.querySelector(".here").setAttribute("transform", `translate(${humidityPct} 0)`);
  byId("scaleText").textContent = criticalPct === null
    ? "The model has no answer for this coat."
    : `This air has ${Math.round(humidityPct)} % relative humidity; this coat blushes from ${Math.round(criticalPct)} % on.`;
}

// One question at a time; while it is away only the newest counts.
async function ask() {
  label();
  const asked = question();
  history.replaceState(null, "", `/what-if?${asked}`);
  byId("link").value = location.href;
  if (asking) {
    askAgain = true;
    return;
  }
  asking = true;
  byId("answer").setAttribute("aria-busy", "true");
  try {
    const answer = await fetch(`/api/what-if?${asked}`);
    const reply = await answer.json();
    if (answer.ok) {
      say("");
      show(reply);
    } else {
      fail(reply.detail);
    }
  } catch {
    fail("BoothWatch does not answer; the figures may be of another question.");
  } finally {
    asking = false;
    byId("answer").setAttribute("aria-busy", "false");
    if (askAgain) {
      askAgain = false;
      ask();
    }
  }
}

function fail(text) {
  say(text);
  showVerdict("wait");
  byId("briefText").textContent = "What if: no answer";
  byId("finding").textContent = "there is no answer to this question";
  byId("action").textContent = "";
  byId("further").replaceChildren();
}

async function start() {
  try {
    choices = await (await fetch("/api/what-if/choices")).json();
  } catch {
    say("BoothWatch does not answer. Reload the page.");
    return;
  }
  prepare();
  const asked = new URLSearchParams(location.search);
  if (asked.has("temperature")) { takeQuestion(asked); } else { await takeBooth(); }
  form.addEventListener("input", event => {
    if (event.target === field.coat) { takeKind(); }
    ask();
  });
  form.addEventListener("submit", event => event.preventDefault());
  byId("fromBooth").addEventListener("click", async () => { await takeBooth(); ask(); });
  byId("copy").hidden = !navigator.clipboard;
  byId("copy").addEventListener("click", async () => {
    await navigator.clipboard.writeText(location.href);
    byId("copy").textContent = "Copied";
  });
  byId("link").addEventListener("focus", event => event.target.select());
  ask();
}

start();
