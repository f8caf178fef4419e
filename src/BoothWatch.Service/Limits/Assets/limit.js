// The page of the shop's own limit. Everything on it comes from /api/limit and /limit.svg; it works out nothing by itself.
"use strict";

const EVERY_MS = 15000;
const MOST_COATS = 40;
let drawn = "";

function gateLine(gate) {
  const item = make("li");
  item.append(make("b", `${gate.have} of ${gate.need}`, gate.isOpen ? "open" : ""));
  item.append(document.createTextNode(` ${gate.what}, to ${gate.direction === "raised" ? "rise" : "fall"}${gate.isOpen ? ": enough" : ""}`));
  return item;
}

function coatLine(coat) {
  const item = make("li");
  const link = make("a", when(coat.start));
  link.href = `/jobs?id=${coat.jobId}`;
  item.append(link, make("span", ` ${words(coat.outcome)}`, coat.outcome === "blushed" ? "bad" : ""),
    make("span", ` with a margin of ${coat.marginC < 0 ? "" : "+"}${difference(coat.marginC)} (standard uncertainty ${difference(coat.marginUncertaintyC)})`));
  return item;
}

// The chart is drawn anew by the server; it is fetched only when what it shows has changed, or the room for it.
function draw(limit) {
  const image = byId("limitChart");
  const width = Math.round(Math.max(240, Math.min(1400, image.parentElement.clientWidth)));
  const height = width < 500 ? 360 : 400;
  const { theme } = document.documentElement.dataset;
  const shows = JSON.stringify([width, theme, limit.inForceC, limit.threshold, limit.coats.length]);
  if (shows === drawn) { return; }
  drawn = shows;
  image.style.setProperty("--shape", `${width} / ${height}`);
  image.src = `/limit.svg?width=${width}&height=${height}&theme=${theme}&at=${Date.now()}`;
}

function show(limit) {
  byId("headline").textContent = limit.headline;
  byId("words").replaceChildren(...limit.words.map(text => make("p", text)));
  byId("demo").hidden = !limit.isDemo;
  byId("gates").replaceChildren(...(limit.gates.length ? limit.gates.map(gateLine) : [make("li", "not known")]));
  const telling = limit.coats.filter(coat => coat.isClose || coat.outcome === "blushed");
  const lines = telling.slice(0, MOST_COATS).map(coatLine);
  if (telling.length > MOST_COATS) { lines.push(make("li", `and ${telling.length - MOST_COATS} older ones`)); }
  byId("coats").replaceChildren(...(lines.length ? lines : [make("li", "none yet")]));
  draw(limit);
}

const refresh = () => showAnswerOf("/api/limit", show);

addEventListener("resize", refresh);
refresh();
setInterval(refresh, EVERY_MS);
