// The page of alerts. What it shows comes from /api/alerts; the phone's own part is in worker.js.
"use strict";

const EVERY_MS = 5000;
const ENDS = { cleared: "all clear", lapsed: "over", replaced: "became worse" };
const outcomes = new Map();
const token = new URLSearchParams(location.hash.slice(1)).get("acknowledge");

const ask = (address, body) => request(address, body, "BoothWatch does not answer. Look at the light of the booth.");

function alertLine(alert) {
  const item = make("li");
  item.dataset.open = String(alert.ended === null);
  item.dataset.level = alert.level;
  const head = make("p");
  head.append(make("b", alert.title), make("span", alert.ended === null ? "goes on" : ENDS[alert.end] ?? "over", "state"));
  item.append(head, make("p", [alert.finding, alert.action].filter(Boolean).join(": ")));
  const told = alert.told ? "" : alert.ended === null ? "held back by quiet hours" : "not told: quiet hours";
  const done = alert.acknowledged ? `acknowledged ${when(alert.acknowledged)} (${alert.acknowledgedBy})` : "";
  item.append(make("p", [`since ${when(alert.began)}`, alert.ended ? `until ${when(alert.ended)}` : "", told, done].filter(Boolean).join(" · "), "small"));
  if (!alert.acknowledged && alert.ended === null) {
    const button = make("button", "Acknowledge");
    button.type = "button";
    button.setAttribute("aria-label", `Acknowledge: ${alert.title}`);
    button.addEventListener("click", async () => {
      button.disabled = true;
      const { problem } = await ask(`/api/alerts/${alert.id}/acknowledge`, {});
      await refresh();
      if (problem) { say(problem); }
    });
    const row = make("div", undefined, "buttons");
    row.append(button);
    item.append(row);
  }
  return item;
}

function channelLine(channel) {
  const item = make("li");
  const row = make("div", undefined, "row");
  const head = make("p");
  head.append(make("b", CHANNELS[channel.name] ?? channel.name), make("span", channel.on ? "on" : "off", "state"));
  const button = make("button", "Test");
  button.type = "button";
  button.disabled = !channel.on;
  button.setAttribute("aria-label", `Test: ${CHANNELS[channel.name] ?? channel.name}`);
  button.addEventListener("click", async () => {
    button.disabled = true;
    outcomes.set(channel.name, "Sending a test message");
    const { json, problem } = await ask(`/api/alerts/test/${channel.name}`, {});
    outcomes.set(channel.name, problem ?? (json.error ? `Failed: ${json.error}` : `Handed over to ${json.taken}. Look whether it arrives.`));
    await refresh();
  });
  row.append(head, button);
  item.append(row);
  const facts = channel.on
    ? [channel.name === "webPush" ? `${channel.receivers} subscribed` : "", channel.lastSuccess ? `last handed over ${when(channel.lastSuccess)}` : "nothing handed over yet", channel.waiting ? `${channel.waiting} waiting` : ""]
    : [channel.offBecause];
  item.append(make("p", facts.filter(Boolean).join(" · "), "small"));
  if (channel.on && channel.lastError) { item.append(make("p", `last error ${when(channel.lastErrorTime)}: ${channel.lastError}`, "small")); }
  if (outcomes.has(channel.name)) { item.append(make("p", outcomes.get(channel.name), "outcome")); }
  return item;
}

function show(state) {
  byId("quiet").hidden = !state.quietUntil;
  if (state.quietUntil) { byId("quiet").textContent = `Quiet hours until ${when(state.quietUntil)}.`; }
  byId("alerts").replaceChildren(...(state.alerts.length ? state.alerts.map(alertLine) : [make("li", state.enabled ? "None so far." : "Alerts are switched off: alerts:enabled.")]));
  byId("channels").replaceChildren(...state.channels.map(channelLine));
}

async function refresh() {
  const { json, problem } = await ask("/api/alerts");
  say(problem ?? "");
  if (json) { show(json); }
}

// A list that is made anew under a finger or the keyboard loses it.
function mayRefresh() {
  return !document.hidden && !(document.activeElement && document.activeElement.closest("#alerts, #channels"));
}

function phone(text, subscribed) {
  byId("phoneText").textContent = text;
  byId("subscribe").hidden = subscribed !== false;
  byId("phoneNameLabel").hidden = subscribed !== false;
  byId("unsubscribe").hidden = subscribed !== true;
}

async function look() {
  if (!window.isSecureContext) {
    phone("Alerts on a phone need the page over https with a certificate that the phone trusts.");
    return;
  }
  if (!("serviceWorker" in navigator) || !("PushManager" in window)) {
    phone("This browser takes no messages here. On an iPhone or iPad, first add this page to the home screen and open it from there.");
    return;
  }
  const registration = await navigator.serviceWorker.register("/worker.js");
  const subscription = await registration.pushManager.getSubscription();
  phone(subscription ? "This phone is subscribed. Test it below; it rings also while this page is closed." : "This phone is not subscribed.", Boolean(subscription));
}

byId("subscribe").addEventListener("click", async () => {
  byId("subscribe").disabled = true;
  try {
    const { json, problem } = await ask("/api/alerts/push-key");
    if (problem) { throw new Error(problem); }
    if (await Notification.requestPermission() !== "granted") { throw new Error("This browser does not allow messages from this page. Allow them in its settings of the page."); }
    const registration = await navigator.serviceWorker.ready;
    const subscription = await registration.pushManager.subscribe({ userVisibleOnly: true, applicationServerKey: json.publicKey });
    const { keys } = subscription.toJSON();
    const answer = await ask("/api/alerts/subscriptions", { endpoint: subscription.endpoint, p256dh: keys.p256dh, auth: keys.auth, name: byId("phoneName").value });
    if (answer.problem) {
      await subscription.unsubscribe();
      throw new Error(answer.problem);
    }
    await refresh();
  } catch (error) {
    say(error.message);
  }
  byId("subscribe").disabled = false;
  await look();
});

byId("unsubscribe").addEventListener("click", async () => {
  const registration = await navigator.serviceWorker.ready;
  const subscription = await registration.pushManager.getSubscription();
  if (subscription) {
    await subscription.unsubscribe();
    const { problem } = await ask("/api/alerts/subscriptions/remove", { endpoint: subscription.endpoint });
    await refresh();
    if (problem) { say(problem); }
  }
  await look();
});

if (token) {
  byId("fromLink").hidden = false;
  byId("fromLinkButton").addEventListener("click", async () => {
    byId("fromLinkButton").disabled = true;
    const { json, problem } = await ask("/api/alerts/acknowledge", { token });
    byId("fromLinkText").textContent = problem ?? `Acknowledged: ${json.title}`;
    byId("fromLinkButton").disabled = !problem;
    if (!problem) { history.replaceState(null, "", "/alerts"); }
    await refresh();
  });
}

refresh();
look().catch(error => phone(`This browser takes no messages here: ${error.message}`));
setInterval(() => { if (mayRefresh()) { refresh(); } }, EVERY_MS);
