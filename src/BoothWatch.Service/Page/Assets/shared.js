// What the pages beside the glance have in common. A page includes it before its own script, after access.js where it changes something.
"use strict";

const OUTCOMES = ["clear", "blushed", "runs", "dry-spray", "orange-peel", "soft"];
const CHANNELS = { webPush: "Phones and browsers", email: "E-mail", webhook: "Webhook", mqtt: "MQTT" };
const UNIT = document.querySelector("meta[name=temperature-unit]").content; // °C or °F; JSON is in °C
const perDegreeC = UNIT === "°F" ? 1.8 : 1;
const byId = id => document.getElementById(id);
const when = time => new Date(time).toLocaleString(undefined, { dateStyle: "medium", timeStyle: "short" });
const words = text => text.replace("-", " ");

// A temperature, and a difference of two, in the unit of the shop.
function temperature(celsius) {
  return celsius === null || celsius === undefined ? "not known" : `${(celsius * perDegreeC + (UNIT === "°F" ? 32 : 0)).toFixed(1)} ${UNIT}`;
}

function difference(celsius, digits = 1) {
  return celsius === null || celsius === undefined ? "not known" : `${(celsius * perDegreeC).toFixed(digits).replace("-", "−")} ${UNIT}`;
}

function make(tag, text, className) {
  const element = document.createElement(tag);
  if (text !== undefined) { element.textContent = text; }
  if (className) { element.className = className; }
  return element;
}

function say(text) {
  byId("notice").textContent = text;
  byId("notice").hidden = !text;
}

// Asks, or changes where there is a body. The answer is its JSON, or what is wrong, in words.
async function request(address, body, silence = "BoothWatch does not answer.") {
  let answer;
  try {
    answer = await (body === undefined ? fetch(address) : boothwatch.post(address, body));
  } catch {
    return { problem: silence, errors: [] };
  }
  const json = await answer.json().catch(() => null);
  if (answer.ok) { return { json }; }
  const problem = json?.detail || `BoothWatch refused: ${answer.status}`;
  return { problem, errors: json?.errors ?? [problem], status: answer.status };
}

// The same, with what is wrong on the page. The answer is the JSON, or null.
async function askOrSay(address, body) {
  const { json, problem } = await request(address, body, "BoothWatch does not answer. What was just entered may not be kept; look again when it does.");
  say(problem ?? "");
  return json ?? null;
}

// Shows what an address answers. Without a session it leads to the sign-in; without an answer the page says that it may be old. Needs access.js.
async function showAnswerOf(address, show) {
  const { json, problem, status } = await request(address, undefined, "BoothWatch does not answer. What is shown may be old.");
  if (status === 401) { boothwatch.signIn(); }
  if (json) { show(json); }
  say(problem ?? "");
}
