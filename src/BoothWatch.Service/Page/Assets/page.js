// Follows the booth by server-sent events. Whatever fails, the page must end at "wait":
// after 5 s without a fresh assessment it says so, after 15 s it shows wait, by its own clock.
"use strict";

const LATE_AFTER_S = 5;
const WAIT_AFTER_S = 15;
const DEAF_AFTER_S = 10;
const CHART_EVERY_S = 10;
const VERDICTS = ["spray", "slow-down", "wait"];

const root = document.documentElement;
const byId = id => document.getElementById(id);

// Two clocks: one may stand still while the device sleeps, the other may be set back. The larger age counts.
const now = () => ({ steady: performance.now(), wall: Date.now() });
const secondsSince = t => Math.max(performance.now() - t.steady, Date.now() - t.wall, 0) / 1000;

// The first HTML may itself be old (a restored tab): count from when the server sent it, unless the clocks plainly differ in the other direction.
const sent = Number(document.body.dataset.sent);
let dataAgeS = Number(document.body.dataset.age);
let dataAt = { steady: 0, wall: sent > 0 ? sent : Date.now() };
let heardAt = now();
let chartAt = now();
let chartBusy = false;
let source = null;
let shown = root.dataset.verdict;

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

function show(view) {
  for (const [name, text] of Object.entries(view.fields)) { if (name !== "word") { setField(name, text); } }
  if (VERDICTS.includes(view.verdict)) {
    showVerdict(view.verdict, view.fields.word);
  } else {
    showVerdict("wait", "Wait");
  }
  setList(byId("further"), view.furtherReasons, setText);
  setList(byId("sensors"), view.sensors, fillHealth);
  setList(byId("outputs"), view.outputs, fillHealth);
  dataAgeS = view.ageS;
  dataAt = now();
  tick();
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
  }

  if (secondsSince(heardAt) > DEAF_AFTER_S) { connect(); }
  if (secondsSince(chartAt) >= CHART_EVERY_S) { drawChart(); }
}

function connect() {
  heardAt = now();
  if (source) { source.close(); }
  source = new EventSource("/api/view");
  source.addEventListener("view", event => {
    heardAt = now();
    show(JSON.parse(event.data));
  });
  source.addEventListener("error", event => { if (event.target.readyState === EventSource.CLOSED) { boothwatch.ensureMayRead(); } });
  source.addEventListener("heartbeat", () => { heardAt = now(); });
}

function drawChart() {
  chartAt = now();
  if (chartBusy) { return; }
  const chart = byId("chart");
  const box = chart.closest(".past").getBoundingClientRect();
  const wide = window.matchMedia("(min-width: 900px)").matches;
  const width = Math.round(box.width - 12);
  const height = wide ? Math.max(240, Math.round(box.height - 12)) : 340;
  const next = new Image();
  chartBusy = true;
  next.onload = () => {
    chartBusy = false;
    document.querySelector(".past source")?.remove(); // from now on the script chooses the size
    chart.width = width;
    chart.height = height;
    chart.src = next.src;
    byId("chartNote").hidden = true;
  };
  next.onerror = () => {
    chartBusy = false;
    byId("chartNote").hidden = false;
  };
  next.src = `/chart.svg?width=${width}&height=${height}&n=${Math.floor(Date.now() / 1000)}`;
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

byId("pieceForm")?.addEventListener("submit", setPiece);
window.addEventListener("pageshow", event => { if (event.persisted) { location.reload(); } });
document.addEventListener("visibilitychange", tick);
setInterval(tick, 500);
connect();
tick();
drawChart();
