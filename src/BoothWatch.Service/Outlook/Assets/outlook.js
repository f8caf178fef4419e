// The page of the outlook. Everything on it comes from /api/outlook and /outlook.svg; it works out nothing by itself.
"use strict";

const EVERY_MS = 30000;
let drawn = "";

const hours = value => value < 1 ? `${Math.round(value * 60)} min` : `${Number(value.toFixed(1))} h`;
const signed = value => value > 0 ? `+${difference(value)}` : difference(value);
const ofTen = share => `${Math.round(share * 10)} of 10`;

function hourLine(outlook, point) {
  const item = make("li");
  item.append(make("b", point.timeOfDay), document.createTextNode(
    ` in ${hours(point.aheadH)}: margin ${signed(point.middleC)} (${signed(point.lowC)} to ${signed(point.highC)}); ${outlook.holdsNow ? "held until then" : "enough by then"} in ${ofTen(point.share)}`));
  return item;
}

function scoreLine(score) {
  const item = make("li");
  item.append(make("b", hours(score.aheadH), score.wins ? "open" : ""), document.createTextNode(
    ` ${score.wins ? "speaks" : "silent"}: off by ${difference(score.crps, 2)}, ‘as it is now’ by ${difference(score.crpsAsItIsNow, 2)}, on ${score.days} days`));
  return item;
}

// Fetched only when what it shows has changed, or the room for it.
function draw(outlook) {
  const image = byId("outlookChart");
  const width = Math.round(Math.max(240, Math.min(1400, image.parentElement.clientWidth)));
  const height = width < 500 ? 320 : 360;
  const { theme } = document.documentElement.dataset;
  const shows = JSON.stringify([width, theme, outlook.time]);
  if (shows === drawn) { return; }
  drawn = shows;
  image.style.setProperty("--shape", `${width} / ${height}`);
  image.src = `/outlook.svg?width=${width}&height=${height}&theme=${theme}&at=${Date.now()}`;
}

function show(outlook) {
  const speaks = outlook.word !== "silent";
  byId("mark").textContent = outlook.mark;
  byId("mark").dataset.word = outlook.word;
  byId("meaning").textContent = outlook.meaning;
  byId("basis").textContent = outlook.basis;
  byId("words").replaceChildren(...outlook.words.map(text => make("p", text)));
  byId("demo").hidden = !outlook.isInvented;
  byId("day").hidden = !speaks;
  byId("score").hidden = outlook.scores.length === 0;
  byId("hours").replaceChildren(...outlook.band.filter(point => point.aheadH > 0 && Number.isInteger(point.aheadH)).map(point => hourLine(outlook, point)));
  byId("scores").replaceChildren(...outlook.scores.map(scoreLine));
  if (speaks) { draw(outlook); }
}

const refresh = () => showAnswerOf("/api/outlook", show);

addEventListener("resize", refresh);
refresh();
setInterval(refresh, EVERY_MS);
