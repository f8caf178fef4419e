// The worker of the app: shows messages, and keeps nothing. A verdict never comes from a store, so there is none.
"use strict";

const GONE = `<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>Wait</title>
<h1>Wait</h1><p>BoothWatch cannot be reached from here, so its verdict is not known. Look at the light of the booth.</p>
<p><a href="">Try again</a></p></html>`;

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", event => event.waitUntil(self.clients.claim()));

self.addEventListener("fetch", event => {
  if (event.request.mode !== "navigate") { return; }
  event.respondWith(fetch(event.request).catch(() =>
    new Response(GONE, { status: 503, headers: { "Content-Type": "text/html; charset=utf-8", "Cache-Control": "no-store" } })));
});

self.addEventListener("push", event => event.waitUntil(show(event.data)));

function read(data) {
  try {
    return data.json();
  } catch {
    return { title: "A message that cannot be read", body: "Open the page of alerts.", place: "", tag: "unreadable" };
  }
}

async function show(data) {
  const message = read(data);
  const late = message.expires !== undefined && Date.now() > Date.parse(message.expires);
  const clear = message.type === "clear";
  const open = Boolean(message.acknowledge) && !late;
  await self.registration.showNotification(late ? `No longer news: ${message.title}` : clear ? `All clear: ${message.title}` : message.title, {
    body: [message.place, message.body].filter(Boolean).join("\n"),
    tag: message.tag,
    renotify: !clear && !late,
    requireInteraction: message.level === "urgent" && open,
    timestamp: message.time === undefined ? Date.now() : Date.parse(message.time),
    icon: "/app-icon-192.png",
    data: { acknowledge: open ? message.acknowledge : null },
    actions: open ? [{ action: "acknowledge", title: "Acknowledge" }] : [],
  });
}

self.addEventListener("notificationclick", event => {
  event.notification.close();
  event.waitUntil(event.action === "acknowledge" ? acknowledge(event.notification.data.acknowledge) : open());
});

async function acknowledge(token) {
  const answer = await fetch("/api/alerts/acknowledge", {
    method: "POST", headers: { "Content-Type": "application/json", "X-BoothWatch-Change": "1" }, body: JSON.stringify({ token }),
  }).catch(() => null);
  if (!answer || !answer.ok) {
    await self.registration.showNotification("Not acknowledged", {
      body: "BoothWatch did not take it. Open the page of alerts and try there.", icon: "/app-icon-192.png", tag: "not-acknowledged",
    });
  }
}

async function open() {
  const windows = await self.clients.matchAll({ type: "window", includeUncontrolled: true });
  const page = windows.find(client => new URL(client.url).pathname === "/alerts");
  return page ? page.focus() : self.clients.openWindow("/alerts");
}

// The browser has ended the subscription, or made another of it (Push API, "pushsubscriptionchange"): the booth is told, or it would go on
// sending to nobody. It takes that from a phone that is signed in; else the person is asked to look.
self.addEventListener("pushsubscriptionchange", event => event.waitUntil(renew(event.oldSubscription, event.newSubscription)));

async function renew(old, fresh) {
  try {
    const subscription = fresh ?? await subscribe(old);
    const { keys } = subscription.toJSON();
    const answer = await fetch("/api/alerts/subscriptions", {
      method: "POST", headers: { "Content-Type": "application/json", "X-BoothWatch-Change": "1" },
      body: JSON.stringify({ endpoint: subscription.endpoint, p256dh: keys.p256dh, auth: keys.auth, replaces: old?.endpoint ?? "" }),
    });
    if (!answer.ok) { throw new Error(String(answer.status)); }
  } catch {
    await self.registration.showNotification("No more alerts on this phone", {
      body: "Its subscription has ended. Open the page of alerts and subscribe anew.", icon: "/app-icon-192.png", tag: "subscription-ended", requireInteraction: true,
    });
  }
}

async function subscribe(old) {
  let key = old?.options?.applicationServerKey;
  if (!key) {
    const answer = await fetch("/api/alerts/push-key");
    if (!answer.ok) { throw new Error(String(answer.status)); }
    key = (await answer.json()).publicKey;
  }
  return self.registration.pushManager.subscribe({ userVisibleOnly: true, applicationServerKey: key });
}
