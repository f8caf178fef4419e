// The running job on the glance: its next wait, one tap to mark or stop a coat, and the soft film where it is at risk.
const EVERY_MS = 15000;
const FORGET_AFTER_MS = 90000;
const byId = id => document.getElementById(id);

let job = null;
let askedAt = 0;
let others = 0;
let undo = null;
let busy = false;

async function ask(address, body) {
  const answer = await (body === undefined ? fetch(address) : boothwatch.post(address, body));
  const json = await answer.json().catch(() => null);
  if (!answer.ok) { throw new Error(json?.detail ?? `BoothWatch refused: ${answer.status}`); }
  return json;
}

function set(id, text) {
  const element = byId(id);
  if (element.textContent !== text) { element.textContent = text; }
}

function inWords(seconds) {
  if (seconds === null || seconds === undefined) { return "nobody can say"; }
  if (seconds <= 0) { return "ready"; } // of the job; whether the air is, the verdict says
  const minutes = Math.ceil(seconds / 60);
  if (minutes < 90) { return `${minutes}\u00a0min`; }
  return minutes < 48 * 60 ? `${Math.floor(minutes / 60)}\u00a0h ${minutes % 60}\u00a0min` : `${Math.round(minutes / 1440)}\u00a0days`;
}

function tap(text, isMain, action) {
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = text;
  button.className = isMain ? "tap main" : "tap";
  button.addEventListener("click", async () => {
    if (busy) { return; }
    busy = true;
    button.disabled = true;
    try {
      take(await action());
    } catch (refusal) {
      set("jobNote", refusal instanceof TypeError ? "The booth does not answer. Look again whether it was kept." : refusal.message);
    }
    busy = false;
    button.disabled = false;
  });
  return button;
}

function take(answer) {
  job = answer;
  askedAt = performance.now();
  set("jobNote", others > 0 ? `and ${others} more running, see Jobs and coats` : "");
  taps();
  paint();
}

// Only when they change: a button must not be swapped under a finger.
function taps() {
  const open = job.coats.find(coat => !coat.details.stop);
  const canUndo = undo !== null && undo === job.undoEntry;
  const key = JSON.stringify([job.id, open?.id, job.next?.kind, job.finished, canUndo]);
  const place = byId("jobTaps");
  if (place.dataset.key === key) { return; }
  place.dataset.key = key;
  const list = [];
  if (open) {
    list.push(tap(`Stop ${open.details.kind} coat`, true, () => ask(`/api/coats/${open.id}/stop`, {})));
  } else if (job.next) {
    list.push(tap(`Mark ${job.next.kind} coat`, true, async () => {
      const answer = await ask(`/api/jobs/${job.id}/coats`, {});
      undo = answer.undoEntry;
      return answer;
    }));
  }
  if (canUndo) { list.push(tap("Undo", false, () => ask(`/api/jobs/${job.id}/undo`, { entry: undo }))); }
  place.replaceChildren(...list);
}

function paint() {
  const known = job !== null && performance.now() - askedAt < FORGET_AFTER_MS && !job.finished;
  byId("job").hidden = !known;
  const watch = known ? job.watch : null;
  const atRisk = Boolean(watch) && watch.state !== "safe";
  byId("risk").hidden = !atRisk;
  if (!known) { return; }
  const sinceS = (performance.now() - askedAt) / 1000;
  const open = job.coats.find(coat => !coat.details.stop);
  const timer = job.timers.find(t => t.kind.startsWith("next") || t.leftS === null || t.leftS - sinceS > 0);
  set("jobName", `Next for ${job.piece}`);
  if (open) {
    set("jobWhen", `coat ${open.place}`);
    set("jobWhat", `${open.details.kind}, being sprayed`);
  } else if (timer) {
    set("jobWhen", inWords(timer.leftS === null ? null : timer.leftS - sinceS));
    set("jobWhat", timer.what);
  } else {
    set("jobWhen", job.next ? "ready" : "–");
    set("jobWhat", job.next ? `for the ${job.next.kind} coat` : "nothing to wait for");
  }
  if (atRisk) {
    byId("risk").dataset.state = watch.state;
    set("riskFinding", watch.finding);
    set("riskAction", watch.action);
  }
}

async function look() {
  if (busy || document.visibilityState !== "visible") { return; }
  try {
    const running = await ask("/api/jobs?running=true&take=1");
    others = Math.max(0, running.total - 1);
    if (running.rows.length === 0) {
      job = null;
      paint();
    } else {
      const answer = await ask(`/api/jobs/${running.rows[0].id}`);
      if (!busy) { take(answer); }
    }
  } catch {
    paint(); // what was known is shown until it is too old
  }
}

export function start() {
  look();
  setInterval(look, EVERY_MS);
  setInterval(paint, 1000);
  document.addEventListener("visibilitychange", look);
}
