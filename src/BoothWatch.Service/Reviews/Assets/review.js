// The review of one coat. Everything on it comes from /api/coats/{id}/review; it works out nothing by itself.
"use strict";

const coatId = location.pathname.split("/")[2];
const narrow = matchMedia("(max-width: 599px)");

const sentence = text => text.charAt(0).toUpperCase() + text.slice(1);

function chart(id, part, alt, review) {
  const image = byId(id);
  const [width, height] = narrow.matches ? [360, 340] : [1040, 360];
  Object.assign(image, { width, height, alt });
  image.src = `/coats/${coatId}/review.svg?part=${part}&width=${width}&height=${height}&theme=${document.documentElement.dataset.theme}&n=${review.air.length}`;
}

function list(id, card, items) {
  byId(id).replaceChildren(...items);
  byId(card).hidden = items.length === 0;
}

function line(figure) {
  const group = make("div");
  group.append(make("dt", figure.label), make("dd", figure.value), make("dd", figure.note, "small"));
  return group;
}

function cause(found) {
  const item = make("li");
  item.append(make("p", `${sentence(found.words)}.`));
  if (found.detail) { item.append(make("p", found.detail, "small")); }
  return item;
}

function show(answer) {
  const review = answer.review;
  const mix = answer.details.mix;
  document.title = `Review: ${answer.piece} · BoothWatch`;
  byId("review").hidden = false;
  // Colour stands for blush; of the other outcomes the model has little to say.
  byId("review").dataset.finding = [null, "clear", "blushed"].includes(review.outcome) || review.finding === "blushes" ? review.finding : "";
  byId("toJob").href = `/jobs?id=${answer.jobId}`;
  byId("toJob").textContent = "Its job";
  byId("piece").textContent = `${answer.piece}, coat ${answer.place}`;
  byId("about").textContent = [
    `${answer.details.kind} coat`, answer.when,
    `${mix.lacquerParts} ${mix.lacquer}${mix.thinnerParts ? ` to ${mix.thinnerParts} ${mix.thinner}` : ", unthinned"}`,
    `${mix.retarderPct} % ${mix.retarder}`, `${answer.details.wetFilmUm} µm wet`,
    review.outcome ? `came out ${words(review.outcome)}` : "", answer.outcomeNote ? `“${answer.outcomeNote}”` : "",
  ].filter(Boolean).join(" · ");
  byId("demo").hidden = !answer.isDemo;
  byId("headline").textContent = review.headline;
  byId("lines").replaceChildren(...answer.lines.map(line));
  list("held", "heldCard", review.remedies.map(remedy => make("li", sentence(remedy.words), remedy.holds ? "yes" : "no")));
  byId("wanted").textContent = "Held means with the whole margin that this shop wants, not just barely. All else as it was, in the air as recorded.";
  list("causes", "causesCard", review.causes.map(cause));
  list("checks", "checksCard", review.checks.map(check => make("li", sentence(check))));
  list("story", "storyCard", review.story.map(part => make("li", part)));
  byId("filmCard").hidden = review.film.length < 2;
  if (review.film.length > 1) {
    chart("filmChart", "film", `Chart of the film from landing to set: its temperature against the dew point, and the water in it. ${review.story[0]}`, review);
  }
  byId("hoursCard").hidden = review.air.length === 0;
  if (review.air.length > 0) {
    chart("hoursChart", "hours", "Chart from an hour before the coat to two hours after it: air, dew point, the dew point at which this coat begins to blush, and piece; coat and set marked, the verdicts along the bottom", review);
  }
  byId("outcomes").replaceChildren(...OUTCOMES.map(outcome => {
    const choice = make("button", words(outcome));
    choice.type = "button";
    choice.setAttribute("aria-pressed", String(outcome === review.outcome));
    choice.addEventListener("click", () => judge(outcome));
    return choice;
  }));
  if (document.activeElement !== byId("note")) { byId("note").value = answer.outcomeNote; }
}

async function judge(outcome) {
  const pressed = document.activeElement && document.activeElement.textContent;
  if (await askOrSay(`/api/coats/${coatId}/outcome`, { outcome, note: byId("note").value.trim() })) {
    await refresh();
    [...byId("outcomes").children].find(choice => choice.textContent === pressed)?.focus();
  }
}

async function refresh() {
  const answer = await askOrSay(`/api/coats/${encodeURIComponent(coatId)}/review`);
  if (answer) { show(answer); }
}

narrow.addEventListener("change", refresh);
window.addEventListener("booththeme", refresh);
refresh();
