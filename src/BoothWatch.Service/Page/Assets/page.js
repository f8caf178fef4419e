// Follows the booth by server-sent events. Whatever fails, the page must end at "wait":
// after 5 s without a fresh assessment it says so, after 15 s it shows wait, by its own clock.
"use strict";

const LATE_AFTER_S = 5;
const WAIT_AFTER_S = 15;
const DEAF_AFTER_S = 10;
const CUPS_ML = [100, 250, 500, 1000];
const VERDICTS = ["spray", "slow-down", "wait"];

const root = document.documentElement;
const byId = id => document.getElementById(id);

// Two clocks: one may stand still while the device sleeps, the other may be set. The larger age counts.
const now = () => ({ steady: performance.now(), wall: Date.now() });
const secondsSince = t => Math.max(performance.now() - t.steady, Date.now() - t.wall, 0) / 1000;

// What the browser keeps: a cup, whether to stay awake. It may keep nothing.
const kept = {
  read: key => { try { return localStorage.getItem(`boothwatch.${key}`); } catch { return null; } },
  write: (key, value) => { try { localStorage.setItem(`boothwatch.${key}`, value); } catch { /* then it holds for this visit */ } },
};

let dataAgeS = Infinity;
let dataAt = now();
let heardAt = now();
let leastLead = null; // of this stream: own clocks less that of the server, s
let source = null;
let shown = "wait";
let cupMl = Number(kept.read("cup")) || null;

function setText(element, text) {
  if (element && element.textContent !== text) { element.textContent = text; }
}

function setField(name, text) {
  for (const element of document.querySelectorAll(`[data-field="${name}"]`)) { setText(element, text); }
}

function setList(list, items, fill) {
  while (list.children.length > items.length) { list.lastElementChild.remove(); }
  while (list.children.length < items.length) { list.append(document.createElement("li")); }
  items.forEach((item, i) => fill(list.children[i], item));
}

function fillHealth(li, line) {
  if (!li.firstElementChild) { li.append(document.createElement("b"), document.createElement("span")); }
  setText(li.children[0], line.name);
  setText(li.children[1], ` ${line.state}${line.detail ? `, ${line.detail}` : ""}`);
  li.className = line.good ? "good" : "bad";
}

function showVerdict(key, word) {
  setField("word", word);
  if (shown === key) { return; }
  shown = key;
  root.dataset.verdict = key;
  document.querySelector("link[rel=icon]").href = `/icon-${key}.svg`;
  document.title = document.title.replace(/^[^·]*/, `${word} `);
}

function show(view, ageS, at) {
  dataAgeS = ageS;
  dataAt = at;
  for (const [name, text] of Object.entries(view.fields)) { if (name !== "word") { setField(name, text); } }
  if (VERDICTS.includes(view.verdict)) {
    showVerdict(view.verdict, view.fields.word);
  } else {
    showVerdict("wait", "Wait");
  }
  setList(byId("further"), view.furtherReasons, setText);
  setList(byId("sensors"), view.sensors, fillHealth);
  setList(byId("outputs"), view.outputs, fillHealth);
  byId("left").hidden = !view.fields.left;
  byId("warm").hidden = !view.warming;
  byId("warm").dataset.state = view.warming;
  showCups(view.shopCupMl);
  tick();
}

// An event may lie in a buffer while the device sleeps: by how much longer this one was on its way than the quickest of this stream, s.
function heldUpS(sentS) {
  const lead = { steady: performance.now() / 1000 - sentS, wall: Date.now() / 1000 - sentS };
  leastLead = leastLead
    ? { steady: Math.min(leastLead.steady, lead.steady), wall: Math.min(leastLead.wall, lead.wall) }
    : lead;
  return Math.max(lead.steady - leastLead.steady, lead.wall - leastLead.wall);
}

function ageS() { return dataAgeS + secondsSince(dataAt); }

function tick() {
  const age = ageS();
  const link = age <= LATE_AFTER_S ? "live" : age <= WAIT_AFTER_S ? "late" : "lost"; // an age that is no number is lost
  if (root.dataset.link !== link) { root.dataset.link = link; }
  root.dataset.pulse = root.dataset.pulse === "a" ? "b" : "a"; // holds up the curtain of page.css
  setText(byId("age"), `data ${age < 100 ? Math.floor(age) : "over 99"} s old`);

  const notice = byId("notice");
  if (link === "live") {
    notice.hidden = true;
  } else if (link === "late") {
    notice.hidden = false;
    setText(notice, "No news from the booth for more than 5 s. Trying again.");
  } else {
    notice.hidden = false;
    setText(notice, "The booth does not answer. What follows is old.");
    showVerdict("wait", "Wait");
    setField("finding", "no news from the booth for more than 15 s");
    setField("action", "wait until this page is live again");
    byId("further").replaceChildren();
    byId("left").hidden = true;
    byId("warm").hidden = true;
  }

  if (secondsSince(heardAt) > DEAF_AFTER_S) { connect(); }
}

function connect() {
  heardAt = now();
  leastLead = null;
  if (source) { source.close(); }
  source = new EventSource(cupMl ? `/api/view?cup=${cupMl}` : "/api/view");
  source.addEventListener("open", () => { leastLead = null; });
  source.addEventListener("view", event => {
    heardAt = now();
    const view = JSON.parse(event.data);
    const heldUp = heldUpS(view.sentS);
    show(view, view.ageS + heldUp, now());
    if (heldUp > LATE_AFTER_S) { connect(); } // a new stream begins with the present state
  });
  source.addEventListener("error", event => { if (event.target.readyState === EventSource.CLOSED) { boothwatch.ensureMayRead(); } });
  source.addEventListener("heartbeat", () => { heardAt = now(); });
}

// Which cup the millilitres are for. The server works them out; the browser keeps the choice.
function showCups(shopMl) {
  const list = byId("cups");
  const chosen = cupMl ?? shopMl;
  setText(byId("cupSize"), chosen ? `${chosen}\u00a0mL` : "");
  list.hidden = !shopMl && !list.firstElementChild.nextElementSibling;
  if (shopMl && list.dataset.shop !== String(shopMl)) {
    list.dataset.shop = shopMl;
    const sizes = [...new Set([...CUPS_ML, shopMl, ...(cupMl ? [cupMl] : [])])].sort((a, b) => a - b);
    list.replaceChildren(list.firstElementChild, ...sizes.map(cupChoice));
  }
  for (const input of list.querySelectorAll("input")) { input.checked = Number(input.value) === chosen; }
}

function cupChoice(ml) {
  const label = document.createElement("label");
  const input = document.createElement("input");
  const text = document.createElement("span");
  Object.assign(input, { type: "radio", name: "cup", value: ml });
  input.setAttribute("aria-label", `${ml} mL`);
  text.textContent = ml;
  label.append(input, text);
  input.addEventListener("change", () => {
    cupMl = ml;
    kept.write("cup", ml);
    connect();
  });
  return label;
}

async function setPiece(event) {
  event.preventDefault();
  const form = event.currentTarget;
  const input = byId("pieceNumber");
  const error = byId("pieceError");
  const number = input.valueAsNumber;
  setText(error, "");
  if (!(number >= Number(input.min) && number <= Number(input.max))) {
    setText(error, error.dataset.range);
    return;
  }

  const temperatureC = Math.round((number - Number(form.dataset.offset)) / Number(form.dataset.scale) * 1000) / 1000;
  try {
    const answer = await boothwatch.post("/api/piece-temperature", { temperatureC });
    if (answer.ok) {
      input.value = "";
      setField("pieceTyped", "taken, the verdict follows");
    } else {
      setText(error, `Not taken: ${(await answer.json()).detail}`);
    }
  } catch {
    setText(error, "Not taken: the booth does not answer.");
  }
}

// A wall tablet must not fall asleep. Browsers offer it on this machine and under TLS only, and take it back with every tab change.
function offerAwake() {
  const button = byId("awake");
  if (!("wakeLock" in navigator)) { return; }
  let lock = null;
  let wanted = kept.read("awake") === "yes";
  const paint = () => button.setAttribute("aria-pressed", String(wanted));
  async function hold() {
    paint();
    try {
      if (wanted && !lock && document.visibilityState === "visible") {
        lock = await navigator.wakeLock.request("screen");
        lock.addEventListener("release", () => { lock = null; });
      } else if (!wanted && lock) {
        await lock.release();
      }
    } catch {
      wanted = false; // low battery, or not allowed
      paint();
    }
  }
  button.hidden = false;
  button.addEventListener("click", () => {
    wanted = !wanted;
    kept.write("awake", wanted ? "yes" : "no");
    hold();
  });
  document.addEventListener("visibilitychange", hold);
  hold();
}

// What a glance does not need comes after it: the running job, and the charts.
async function loadRest() {
  if (document.body.dataset.outlook === "yes") { import("/outlook-tile.js").then(tile => tile.start()); }
  if (document.body.dataset.jobs === "yes") { import("/jobs-tile.js").then(tile => tile.start()); }
  import("/chart.js").then(chart => chart.start(byId("past")));
}

byId("pieceForm")?.addEventListener("submit", setPiece);
window.addEventListener("pageshow", event => { if (event.persisted) { location.reload(); } });
document.addEventListener("visibilitychange", tick);
setInterval(tick, 500);

// The first state came with the HTML, which may itself be old (a restored tab): it counts from when the server sent it.
const sent = Number(document.body.dataset.sent);
const first = JSON.parse(byId("first").textContent);
show(first, first.ageS, { steady: 0, wall: sent > 0 ? sent : 0 });
performance.mark("glance");
connect();
offerAwake();
(window.requestIdleCallback ?? setTimeout)(loadRest);
