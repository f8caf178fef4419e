// The past of the booth: air, dew point, film and margin over time, the verdicts and coats below them. It comes after the glance.
// Where the build had no chart library, or it does not load, the drawing of the server stands in for it.
import { follow } from "/chart-touch.js";

const SPANS = [["Hour", 3600, 1500], ["Day", 86400, 1500], ["Week", 604800, 12000], ["Month", 2592000, 12000]];
const LEAST_SPAN_S = 60;
const MOST_SPAN_S = 366 * 86400;
const POINTS_WANTED = 1500;
const OPEN_COAT_S = 3600; // a coat that nobody stopped is taken to be sprayed until now, but no longer than this
const PICTURE_EVERY_MS = 10000;
const body = document.body;
const COLUMNS = ["temperatureC", "dewPointC", "lowestFilmTemperatureC", "blushMarginC", "verdict"];

let section;
let drawing = null;
let loaded = { timeS: [], from: 0, to: 0, stepS: Infinity };
let coats = [];
let view = { from: 0, to: 0 };
let span = null; // the chosen span, which follows the present; null once it was moved away
let at = null; // index of the moment pointed at
let asked = 0;

const nowS = () => Date.now() / 1000;
const make = (tag, properties = {}, ...children) => {
  const element = Object.assign(document.createElement(tag), properties);
  element.append(...children);
  return element;
};

export async function start(place) {
  section = place;
  if (body.dataset.charts === "library") {
    try {
      await Promise.all([style("/chart/uplot.css"), style("/chart.css"), script("/chart/uplot.js")]);
      const { draw } = await import("/chart-drawing.js");
      build(draw);
      return;
    } catch {
      section.replaceChildren();
    }
  }
  showPicture();
}

function style(address) {
  return new Promise((done, failed) => {
    document.head.append(make("link", { rel: "stylesheet", href: address, onload: done, onerror: failed }));
  });
}

function script(address) {
  return new Promise((done, failed) => {
    document.head.append(make("script", { src: address, onload: done, onerror: failed }));
  });
}

// ---- with the library --------------------------------------------------------------------------

function build(draw) {
  const spans = make("div", { className: "spans" });
  spans.setAttribute("role", "group");
  spans.setAttribute("aria-label", "Time span");
  const usual = usualSpan();
  const choices = [...(SPANS.includes(usual) ? [] : [usual]), ...SPANS];
  for (const choice of choices) { spans.append(tap(choice[0], choice[0], () => choose(choice))); }

  const area = make("div", { className: "area", tabIndex: 0 });
  area.setAttribute("role", "slider");
  area.setAttribute("aria-valuenow", "0");
  area.setAttribute("aria-valuetext", "no readings yet");
  area.setAttribute("aria-label", "Moment in the chart");
  area.setAttribute("aria-describedby", "chartKeys");
  const moves = make("div", { className: "moves" },
    tap("◀", "Earlier", () => move(-0.5)), tap("▶", "Later", () => move(0.5)),
    tap("−", "Wider", () => zoom(2)), tap("+", "Closer", () => zoom(0.5)));
  section.replaceChildren(
    make("div", { className: "head" }, make("h2", { textContent: "The past" }), spans),
    make("div", { className: "readout", id: "readout" }),
    area,
    moves,
    make("p", { className: "small note", id: "chartNote", hidden: true }),
    make("p", { className: "small keys", id: "chartKeys", textContent: "Drag to move, pinch to zoom, hold to read values. Keys: arrows read values, page up and down move, plus and minus zoom." }));
  readoutParts();

  drawing = draw(area, { unit: body.dataset.unit, zone: body.dataset.zone, coats: () => coats });
  follow(area, {
    view: () => view,
    plot: () => drawing.plotBox(),
    show: (from, to) => { leave(); setView(from, to); },
    settle: refine,
    point: x => point(drawing.indexAt(x)),
    pointNowhere: () => point(null),
    step, home: () => point(0), end: () => point(loaded.timeS.length - 1), move, zoom,
  });

  new ResizeObserver(() => drawing.resize()).observe(area);
  window.addEventListener("booththeme", () => drawing.recolour());
  choose(usual);
  keepUp();
}

// A compressed demo day lasts minutes: its chart begins with it. Else the span of the settings.
function usualSpan() {
  const hours = Number(body.dataset.hours);
  return body.dataset.since ? ["This run", 0, POINTS_WANTED]
    : SPANS.find(choice => choice[1] === hours * 3600) ?? [`${hours}\u00a0h`, hours * 3600, POINTS_WANTED];
}

function tap(text, label, action) {
  const button = make("button", { type: "button", textContent: text });
  if (text !== label) { button.setAttribute("aria-label", label); }
  button.addEventListener("click", action);
  return button;
}

function choose(choice) {
  span = choice;
  for (const button of section.querySelectorAll(".spans button")) { button.setAttribute("aria-pressed", String(button.textContent === choice[0])); }
  return load(...spanNow(), choice[2], true);
}

// The chosen span, up to the present.
function spanNow() {
  const to = nowS();
  const since = Math.max(Number(body.dataset.since), to - Number(body.dataset.hours) * 3600);
  return span[1] > 0 ? [to - span[1], to] : [Math.min(since, to - LEAST_SPAN_S), to];
}

function leave() {
  if (span === null) { return; }
  span = null;
  for (const button of section.querySelectorAll(".spans button")) { button.setAttribute("aria-pressed", "false"); }
}

function setView(from, to) {
  const middle = (from + to) / 2;
  const width = Math.min(Math.max(to - from, LEAST_SPAN_S), MOST_SPAN_S);
  const latest = nowS() + width * 0.05;
  const right = Math.min(middle + width / 2, latest);
  view = { from: right - width, to: right };
  Object.assign(section.dataset, { from: Math.round(view.from), to: Math.round(view.to) });
  drawing.setView(view.from, view.to);
}

function move(share) {
  leave();
  const by = (view.to - view.from) * share;
  setView(view.from + by, view.to + by);
  refine();
}

function zoom(factor) {
  leave();
  const centre = at === null || loaded.timeS[at] < view.from || loaded.timeS[at] > view.to ? (view.from + view.to) / 2 : loaded.timeS[at];
  setView(centre - (centre - view.from) * factor, centre + (view.to - centre) * factor);
  refine();
}

// After a move: what is in sight is fetched anew where it was not fetched, or not finely enough.
function refine() {
  const width = view.to - view.from;
  const fineEnough = loaded.stepS <= Math.max(2, width / POINTS_WANTED * 2);
  const covered = view.from >= loaded.from && view.to <= Math.max(loaded.to, nowS());
  if (!(fineEnough && covered)) { load(view.from - width / 2, Math.min(view.to + width / 2, nowS() + 1), 2 * POINTS_WANTED, false); }
}

async function load(from, to, points, setsView) {
  const began = performance.now();
  const mine = ++asked;
  const range = `from=${new Date(from * 1000).toISOString()}&to=${new Date(to * 1000).toISOString()}`;
  try {
    const [answer, marked] = await Promise.all([
      fetch(`/api/history?shape=columns&points=${points}&${range}`),
      body.dataset.jobs === "yes" ? fetch(`/api/coats?take=200&${range}`).then(a => a.ok ? a.json() : null, () => null) : null,
    ]);
    const past = await answer.json();
    if (mine !== asked) { return; }
    if (!answer.ok) {
      note(past.detail);
      return;
    }
    coats = (marked?.rows ?? []).map(row => ({ ...row, startS: Date.parse(row.start) / 1000, stopS: row.stop ? Date.parse(row.stop) / 1000 : Math.min(nowS(), Date.parse(row.start) / 1000 + OPEN_COAT_S) }));
    take(past, from, to);
    if (setsView) { setView(from, to); }
    note(past.timeS.length === 0 ? "No readings in this span." : Number(body.dataset.speed) > 1 ? `Clock time; the shop's day runs ${body.dataset.speed} times faster.` : "");
    section.dataset.ms = Math.round(performance.now() - began);
    section.dataset.rows = past.timeS.length;
    section.dataset.drawn = span?.[0] ?? "moved";
  } catch {
    if (mine === asked) { note("The past is not to be had now; what is shown may be old."); }
  }
}

function take(past, from, to) {
  const pointedAt = at === null ? null : loaded.timeS[at];
  const times = past.timeS;
  const steps = times.slice(1).map((t, i) => t - times[i]).sort((a, b) => a - b);
  const stepS = steps[Math.floor(steps.length / 2)] ?? Infinity;
  loaded = { ...withGaps(past, Math.max(15, 3 * stepS)), from, to, stepS };
  drawing.setData(loaded);
  point(pointedAt === null ? null : nearest(pointedAt));
}

// A silence breaks the lines: a row of nothing stands in it.
function withGaps(past, gapS) {
  const scale = Number(body.dataset.scale);
  const offset = Number(body.dataset.offset);
  const degrees = c => c === null ? null : c * scale + offset;
  const difference = c => c === null ? null : c * scale;
  const convert = { temperatureC: degrees, dewPointC: degrees, lowestFilmTemperatureC: degrees, blushMarginC: difference, verdict: v => v };
  const rows = { timeS: [] };
  for (const name of COLUMNS) { rows[name] = []; }
  past.timeS.forEach((t, i) => {
    if (i > 0 && t - past.timeS[i - 1] > gapS) {
      rows.timeS.push((t + past.timeS[i - 1]) / 2);
      for (const name of COLUMNS) { rows[name].push(null); }
    }
    rows.timeS.push(t);
    for (const name of COLUMNS) { rows[name].push(convert[name](past[name][i])); }
  });
  return rows;
}

// ---- the moment pointed at ----------------------------------------------------------------------

function nearest(timeS) {
  const times = loaded.timeS;
  let low = 0;
  let high = times.length - 1;
  if (high < 0) { return null; }
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (times[middle] < timeS) { low = middle; } else { high = middle; }
  }
  return timeS - times[low] < times[high] - timeS ? low : high;
}

function step(by) {
  const from = at ?? nearest(view.to);
  if (from === null) { return; }
  point(Math.min(Math.max(from + by, 0), loaded.timeS.length - 1));
  const timeS = loaded.timeS[at];
  const width = view.to - view.from;
  if (timeS < view.from || timeS > view.to) {
    leave();
    setView(timeS - width / 2, timeS + width / 2);
    refine();
    drawing.point(at);
  }
}

const PARTS = [["Air", "temperatureC", "air"], ["Dew point", "dewPointC", "dew"], ["Coldest film", "lowestFilmTemperatureC", "film"], ["Margin", "blushMarginC", "margin"]];

function readoutParts() {
  const place = section.querySelector("#readout");
  place.append(make("p", { className: "moment", id: "moment" }));
  for (const [title, name, key] of PARTS) {
    place.append(make("p", { className: `value ${key}` }, make("span", { textContent: title }), make("b", { id: `at-${name}` })));
  }
  place.append(make("p", { className: "value said" }, make("span", { textContent: "Verdict" }), make("b", { id: "at-verdict" })));
}

function point(index) {
  at = index;
  drawing.point(index);
  // With nothing pointed at: the newest.
  const shown = index ?? loaded.timeS.length - 1;
  const known = shown >= 0;
  const time = known ? drawing.timeText(loaded.timeS[shown]) : "";
  const coat = known && index !== null ? drawing.coatNear(loaded.timeS[shown]) : null;
  const said = coat ? `, ${coat.kind} coat ${coat.place}, ${coat.piece}${coat.outcome ? `: ${coat.outcome.replace("-", " ")}` : ""}` : "";
  const texts = [];
  for (const [title, name] of PARTS) {
    const value = known ? loaded[name][shown] : null;
    const text = value === null ? "–" : `${name === "blushMarginC" && value > 0 ? "+" : ""}${value.toFixed(1).replace("-", "−")}\u00a0${body.dataset.unit}`;
    document.getElementById(`at-${name}`).textContent = text;
    texts.push(`${title.toLowerCase()} ${text}`);
  }
  const verdict = known && loaded.verdict[shown] !== null ? ["wait", "slow down", "spray"][loaded.verdict[shown]] : "–";
  document.getElementById("at-verdict").textContent = verdict;
  document.getElementById("moment").textContent = `${index === null ? "Newest: " : ""}${time}${said}`;
  const area = section.querySelector(".area");
  area.setAttribute("aria-valuemin", "0");
  area.setAttribute("aria-valuemax", String(Math.max(loaded.timeS.length - 1, 0)));
  area.setAttribute("aria-valuenow", String(Math.max(shown, 0)));
  area.setAttribute("aria-valuetext", known ? `${time}${said}: ${texts.join(", ")}, ${verdict}` : "no readings");
}

function note(text) {
  const place = section.querySelector("#chartNote");
  place.textContent = text;
  place.hidden = !text;
}

// A span that follows the present is fetched again as often as a picture point of it passes.
function keepUp() {
  const width = view.to - view.from;
  setTimeout(async () => {
    if (span !== null && document.visibilityState === "visible") { await load(...spanNow(), span[2], true); }
    keepUp();
  }, Math.min(Math.max(width / 360 * 1000, 3000), 60000));
}

// ---- without it ---------------------------------------------------------------------------------

function showPicture() {
  const picture = make("img", { id: "chart", alt: "Chart of the last hours: air, dew point, blush limit and film temperature over time, with the verdicts along the bottom" });
  const trouble = make("p", { className: "small", hidden: true, textContent: "The chart is not to be had now; it may be old." });
  section.replaceChildren(make("h2", { textContent: "The past" }), trouble, picture);
  const draw = () => {
    if (document.visibilityState !== "visible") { return; }
    const width = Math.max(240, Math.round(section.clientWidth - 28));
    const height = width < 600 ? 340 : 380;
    const next = new Image();
    next.onload = () => {
      Object.assign(picture, { src: next.src, width, height });
      trouble.hidden = true;
      section.dataset.drawn = "picture";
    };
    next.onerror = () => { trouble.hidden = false; };
    next.src = `/chart.svg?width=${width}&height=${height}&theme=${document.documentElement.dataset.theme ?? "dark"}&n=${Math.floor(Date.now() / 1000)}`;
  };
  draw();
  setInterval(draw, PICTURE_EVERY_MS);
  window.addEventListener("booththeme", draw);
}
