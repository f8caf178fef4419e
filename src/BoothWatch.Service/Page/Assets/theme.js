// Dark or light: as the device says, or as chosen here. Loaded before the page is painted; every page may use it.
"use strict";

(() => {
  const KEY = "boothwatch.theme";
  const root = document.documentElement;
  const device = window.matchMedia("(prefers-color-scheme: light)");
  const read = () => { try { return localStorage.getItem(KEY); } catch { return null; } };
  const write = value => { try { localStorage.setItem(KEY, value); } catch { /* a browser that keeps nothing */ } };

  function apply() {
    const chosen = read();
    const theme = chosen === "light" || chosen === "dark" ? chosen : device.matches ? "light" : "dark";
    if (root.dataset.theme === theme) { return; }
    root.dataset.theme = theme;
    document.querySelector("meta[name=theme-color]")?.setAttribute("content", theme === "light" ? "#eef1f4" : "#0d1015");
    label();
    window.dispatchEvent(new Event("booththeme"));
  }

  function label() {
    const text = document.querySelector("#theme span");
    if (text) { text.textContent = root.dataset.theme === "light" ? "Dark" : "Light"; }
  }

  apply();
  device.addEventListener("change", apply);
  window.addEventListener("storage", apply);
  document.addEventListener("DOMContentLoaded", () => {
    const button = document.getElementById("theme");
    if (!button) { return; }
    button.hidden = false;
    label();
    button.addEventListener("click", () => {
      write(root.dataset.theme === "light" ? "dark" : "light");
      apply();
    });
  });
})();
