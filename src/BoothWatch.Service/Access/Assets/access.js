// Shared by every page: makes changes the one way that the service takes them, and leads to the sign-in when there is no session.
// A page includes it before its own script and calls boothwatch.post(address, body) where it would call fetch.
"use strict";

const boothwatch = (() => {
  // Leads to the sign-in, and back here afterwards.
  function signIn() {
    location.assign(`/sign-in?next=${encodeURIComponent(location.pathname + location.search)}`);
  }

  // Sends a change; the answer is that of fetch. Without a session it leads to the sign-in.
  async function send(method, address, body = {}) {
    const answer = await fetch(address, {
      method,
      headers: { "Content-Type": "application/json", "X-BoothWatch-Change": "1" },
      body: JSON.stringify(body),
    });
    if (answer.status === 401) { signIn(); }
    return answer;
  }

  const post = (address, body) => send("POST", address, body);

  async function session() {
    const answer = await fetch("/api/session");
    return answer.ok ? answer.json() : null;
  }

  // For a page that is no longer answered: if that is for want of a session, it leads to the sign-in.
  async function ensureMayRead() {
    const now = await session().catch(() => null);
    if (now && !now.mayRead) { signIn(); }
  }

  async function signOut() {
    await post("/api/sign-out");
    location.assign("/sign-in?out");
  }

  // Fills every element with data-access: a way to the sign-in, or out.
  async function offer() {
    const places = document.querySelectorAll("[data-access]");
    const now = places.length ? await session().catch(() => null) : null;
    if (!now) { return; }
    for (const place of places) {
      const button = document.createElement("button");
      button.type = "button";
      button.textContent = now.signedIn ? "Sign out" : "Sign in";
      button.addEventListener("click", now.signedIn ? signOut : signIn);
      place.replaceChildren(button);
    }
  }

  if (typeof document !== "undefined") { offer(); } // a service worker has none
  return { send, post, session, signIn, ensureMayRead };
})();
