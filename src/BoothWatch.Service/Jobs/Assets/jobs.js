// The page of jobs. Everything on it comes from /api/jobs and /api/coats; it works out nothing by itself.
"use strict";

const PAGE = 50;
const EVERY_MS = 10000;
const jobId = new URLSearchParams(location.search).get("id");
let shown = 0;

const parts = count => `${count} ${count === 1 ? "part" : "parts"}`;
const cup = mix => `${mix.thinnerParts > 0 ? `${parts(mix.lacquerParts)} ${mix.lacquer} to ${parts(mix.thinnerParts)} ${mix.thinner}` : `${mix.lacquer}, unthinned`}, ${mix.retarderPct > 0 ? `${mix.retarderPct} % ${mix.retarder}` : "no retarder"}`;

function left(seconds) {
  if (seconds === null) { return "nobody can say"; }
  if (seconds <= 0) { return "now"; }
  const minutes = Math.ceil(seconds / 60);
  if (minutes < 120) { return `in ${minutes} min`; }
  return minutes < 48 * 60 ? `in ${Math.floor(minutes / 60)} h ${minutes % 60} min` : `in ${(minutes / 1440).toFixed(1)} days`;
}

function button(text, action, main) {
  const element = make("button", text, main ? "main" : "");
  element.type = "button";
  element.addEventListener("click", async () => {
    element.disabled = true;
    const job = await action();
    if (job) { showJob(job); }
    element.disabled = false;
  });
  return element;
}

function coatLine(coat, job) {
  const details = coat.details;
  const item = make("li");
  const head = make("p");
  head.append(make("b", `${coat.place}. ${details.kind} coat`));
  head.append(make("span", ` ${when(details.start)}${details.stop ? "" : ", being sprayed"}`));
  if (coat.outcome) { head.append(make("span", ` ${words(coat.outcome)}`, coat.outcome === "clear" ? "" : "bad")); }
  item.append(head);
  const mix = details.mix;
  item.append(make("p", `${cup(mix)}; ${details.wetFilmUm} µm wet`, "small"));
  const moment = coat.moment;
  item.append(make("p", moment
    ? `air ${temperature(moment.airTemperatureC)}, ${moment.relativeHumidityPct.toFixed(0)} %, dew point ${temperature(moment.dewPointC)}; blush margin ${difference(moment.blushMarginC)}; verdict ${moment.verdict}`
    : "the air was not known", "small"));
  for (const correction of coat.corrections) {
    item.append(make("p", `corrected ${when(correction.at)}${correction.why ? `: ${correction.why}` : ""}; as marked: ${coat.original.kind}, ${coat.original.mix.retarderPct} % retarder, ${coat.original.wetFilmUm} µm`, "small"));
  }
  if (coat.outcomeNote) { item.append(make("p", coat.outcomeNote, "small")); }
  const row = make("div", undefined, "fields");
  const pick = make("select");
  pick.setAttribute("aria-label", `How coat ${coat.place} came out`);
  pick.append(new Option("how did it come out?", ""));
  for (const outcome of OUTCOMES) { pick.append(new Option(words(outcome), outcome, false, outcome === coat.outcome)); }
  pick.addEventListener("change", async () => {
    if (!pick.value) { return; }
    const answer = await askOrSay(`/api/coats/${coat.id}/outcome`, { outcome: pick.value });
    if (answer) { showJob(answer); }
  });
  const pickLabel = make("label", "Outcome ");
  pickLabel.append(pick);
  const retarder = make("input");
  Object.assign(retarder, { type: "number", min: "0", max: "30", step: "0.5", value: mix.retarderPct });
  const retarderLabel = make("label", "Retarder, % ");
  retarderLabel.append(retarder);
  row.append(pickLabel, retarderLabel, button("Correct", () => askOrSay(`/api/coats/${coat.id}/correct`, { retarderPct: Number(retarder.value) })));
  const review = make("a", coat.outcome === "blushed" ? "Why did it blush?" : "Review of this coat", "review");
  review.href = `/coats/${coat.id}/review`;
  row.append(review);
  item.append(row);
  return item;
}

function showJob(job) {
  byId("one").hidden = false;
  byId("start").hidden = true;
  document.title = `${job.piece} · BoothWatch`;
  byId("piece").textContent = job.piece;
  byId("about").textContent = [job.finish, `job ${job.id}`, `started ${when(job.started)}`, job.finished ? `finished ${when(job.finished)}` : "running", job.note].filter(Boolean).join(" · ");
  byId("demo").hidden = !job.isDemo;
  const open = job.coats.find(coat => !coat.details.stop);
  const actions = [];
  if (!job.finished) {
    if (open) { actions.push(button(`Stop coat ${open.place}`, () => askOrSay(`/api/coats/${open.id}/stop`, {}), true)); }
    else if (job.next) { actions.push(button(`Mark ${job.next.kind} coat`, () => askOrSay(`/api/jobs/${job.id}/coats`, {}), true)); }
    actions.push(button("Finish job", () => askOrSay(`/api/jobs/${job.id}/finish`, {})));
  }
  if (job.undoEntry) { actions.push(button(`Undo ${job.undoWhat}`, () => askOrSay(`/api/jobs/${job.id}/undo`, { entry: job.undoEntry }))); }
  byId("actions").replaceChildren(...actions);
  const next = job.next;
  byId("prefill").textContent = next && !open ? `Next: ${next.kind}, ${cup(next.mix)}, ${next.wetFilmUm} µm wet` : "";
  const watch = job.watch;
  byId("watch").hidden = !watch;
  if (watch) {
    byId("watch").dataset.state = watch.state;
    byId("watchFinding").textContent = `${words(watch.state)}: ${watch.finding}`;
    byId("watchAction").textContent = [watch.action, watch.until ? `soft until about ${when(watch.until)}` : "soft until nobody can say"].filter(Boolean).join("; ");
  }
  byId("timers").replaceChildren(...(job.timers.length ? job.timers : []).map(timer => {
    const item = make("li");
    item.append(make("b", left(timer.leftS)), make("span", ` ${timer.what}${timer.due ? `, ${when(timer.due)}` : ""}`));
    if (timer.why) { item.append(make("p", timer.why, "small")); }
    return item;
  }));
  const link = make("a", "These waits as a calendar");
  link.href = `/api/jobs/${job.id}/timers.ics`;
  byId("calendar").replaceChildren(job.timers.length ? link : document.createTextNode("nothing to wait for"));
  byId("record").replaceChildren(...[["PDF", "pdf"], ["CSV", "csv"], ["CSV metadata", "csv-metadata.json"], ["JSON", "json"]].map(([name, ending]) => {
    const file = make("a", name);
    file.href = `/api/jobs/${job.id}/record.${ending}`;
    return file;
  }));
  byId("coats").replaceChildren(...(job.coats.length ? job.coats.map(coat => coatLine(coat, job)).reverse() : [make("li", "none yet", "small")]));
}

function jobRow(row) {
  const item = make("li");
  const link = make("a", row.piece);
  link.href = `/jobs?id=${row.id}`;
  item.append(link);
  if (row.isDemo) { item.append(make("span", "demo", "tag")); }
  item.append(make("p", `${when(row.started)} · ${row.finished ? "finished" : "running"} · ${row.coats} ${row.coats === 1 ? "coat" : "coats"}${row.blushed ? `, ${row.blushed} blushed` : ""} · least margin ${difference(row.leastMarginC)}`, "small"));
  return item;
}

function coatRow(row) {
  const item = make("li");
  const link = make("a", `${row.piece}, coat ${row.place}: ${row.kind}`);
  link.href = `/jobs?id=${row.jobId}`;
  item.append(link);
  if (row.isDemo) { item.append(make("span", "demo", "tag")); }
  item.append(make("p", `${when(row.start)} · ${row.outcome ? words(row.outcome) : "outcome not said"} · margin ${difference(row.marginC)} · ${row.retarderPct} % retarder`, "small"));
  return item;
}

async function search(more) {
  const form = new FormData(byId("searchForm"));
  const query = new URLSearchParams();
  const coats = form.get("outcome") || form.get("marginTo");
  if (form.get("piece")) { query.set("piece", form.get("piece")); }
  if (form.get("from")) { query.set("from", new Date(`${form.get("from")}T00:00`).toISOString()); }
  if (form.get("to")) { query.set("to", new Date(new Date(`${form.get("to")}T00:00`).getTime() + 86400000).toISOString()); }
  if (form.get("outcome")) { query.set("outcome", form.get("outcome")); }
  if (form.get("marginTo")) { query.set("marginTo", (Number(form.get("marginTo")) / perDegreeC).toFixed(2)); }
  query.set("take", PAGE);
  query.set("skip", more ? shown : 0);
  const page = await askOrSay(`/api/${coats ? "coats" : "jobs"}?${query}`);
  if (!page) { return; }
  const rows = page.rows.map(coats ? coatRow : jobRow);
  if (more) { byId("list").append(...rows); } else { byId("list").replaceChildren(...rows); }
  shown = (more ? shown : 0) + rows.length;
  byId("found").textContent = `${page.total} ${coats ? "coat" : "job"}${page.total === 1 ? "" : "s"}`;
  byId("more").hidden = shown >= page.total;
}

async function refresh() {
  // Not while somebody is filling in a field.
  if (document.activeElement && document.activeElement.closest("#coats")) { return; }
  const job = await askOrSay(`/api/jobs/${encodeURIComponent(jobId)}`);
  if (job) { showJob(job); }
}

const schedulesKnown = askOrSay("/api/schedules").then(schedules => {
  for (const schedule of schedules ?? []) { byId("schedules").append(new Option(schedule.description, schedule.id, schedule.isDefault, schedule.isDefault)); }
});
byId("startForm").addEventListener("submit", async event => {
  event.preventDefault();
  await schedulesKnown; // else a quick hand would start a job without one
  const form = new FormData(event.target);
  const job = await askOrSay("/api/jobs", { piece: form.get("piece"), finish: form.get("finish"), schedule: form.get("schedule") || null });
  if (job) { location.assign(`/jobs?id=${job.id}`); }
});
byId("searchForm").addEventListener("submit", event => { event.preventDefault(); search(false); });
byId("more").addEventListener("click", () => search(true));
for (const outcome of OUTCOMES) { byId("outcomes").append(new Option(words(outcome), outcome)); }
if (jobId) {
  byId("all").hidden = true;
  refresh();
  setInterval(refresh, EVERY_MS);
} else {
  search(false);
}
