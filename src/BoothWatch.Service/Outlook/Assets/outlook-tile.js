// The outlook on the glance: the day in a few words and what they mean; while it is silent, why. The server has the words.
const EVERY_MS = 30000;
const FORGET_AFTER_MS = 20 * 60000;
const HIDDEN = ["day-over", "switched-off", "not-yet"];
const byId = id => document.getElementById(id);
let askedAt = null;

function set(id, text) {
  const element = byId(id);
  if (element.textContent !== text) { element.textContent = text; }
}

function show(outlook) {
  const tile = byId("outlook");
  tile.dataset.word = outlook.word;
  set("outlookMark", outlook.mark);
  set("outlookMeaning", outlook.meaning);
  set("outlookBasis", outlook.word === "silent" ? outlook.basis : "");
  tile.hidden = HIDDEN.includes(outlook.silence);
}

async function look() {
  if (document.visibilityState !== "visible") { return; }
  try {
    const answer = await fetch("/api/outlook");
    if (!answer.ok) { throw new Error(answer.status); }
    askedAt = performance.now();
    show(await answer.json());
  } catch {
    // An outlook that nobody renews grows untrue without looking it.
    if (askedAt === null || performance.now() - askedAt > FORGET_AFTER_MS) { byId("outlook").hidden = true; }
  }
}

export function start() {
  look();
  setInterval(look, EVERY_MS * Math.min(1, 10 / Number(document.body.dataset.speed || 1)));
  document.addEventListener("visibilitychange", look);
}
