// The page to sign in: asks what a sign-in takes, sends the secret, and goes back to where the person came from.
"use strict";

const byId = id => document.getElementById(id);
const query = new URLSearchParams(location.search);

// Only within this page: a foreign address in 'next' leads to the booth.
function onward() {
  const next = new URL(query.get("next") ?? "/", location.origin);
  location.replace(next.origin === location.origin && !next.pathname.startsWith("/sign-in") ? next.href : "/");
}

function say(text) { byId("error").textContent = text; }

async function trySecret(secret) {
  byId("submit").disabled = true;
  say("");
  try {
    const answer = await fetch("/api/sign-in", {
      method: "POST",
      headers: { "Content-Type": "application/json", "X-BoothWatch-Change": "1" },
      body: JSON.stringify({ secret }),
    });
    if (answer.ok) {
      onward();
      return;
    }

    const problem = await answer.json().catch(() => ({}));
    say(answer.status === 429 ? `Too many tries from here. Try again in ${answer.headers.get("Retry-After") ?? 60} s.` : `Not signed in: ${problem.detail ?? answer.status}.`);
  } catch {
    say("BoothWatch does not answer. Try again.");
  }

  byId("submit").disabled = false;
  byId("secret").select();
}

async function begin() {
  const now = await (await fetch("/api/session")).json();
  if (now.signedIn) {
    onward();
  } else if (now.signInWith === "nothing") {
    byId("form").hidden = true;
    byId("about").textContent = "No secret is set, so nothing can be changed from this machine. Set one on the machine of the booth with “access set-secret”.";
  } else if (now.signInWith === "start-code") {
    byId("label").textContent = "Start code";
    byId("hint").textContent = "No secret is set. BoothWatch printed a link and its code when it started, in its terminal or log; it is good once. “access set-secret” sets a secret instead.";
    byId("secret").autocomplete = "one-time-code";
    byId("secret").type = "text";
    byId("show").hidden = true;
  } else if (query.has("out")) {
    byId("about").textContent = "You are signed out.";
  }
}

// A link from the log carries its code behind the #, which no server and no log of one gets to see.
const code = decodeURIComponent(location.hash.slice(1));
if (code) { history.replaceState(null, "", location.pathname + location.search); }

byId("form").addEventListener("submit", event => {
  event.preventDefault();
  trySecret(byId("secret").value);
});
byId("show").addEventListener("click", () => {
  const shown = byId("secret").type === "password";
  byId("secret").type = shown ? "text" : "password";
  byId("show").setAttribute("aria-pressed", String(shown));
});
byId("bare").hidden = isSecureContext; // over TLS, or on this machine
begin().catch(() => say("BoothWatch does not answer. Reload the page."));
if (code) { trySecret(code); }
