// Fingers, mouse and keys over the chart. One finger moves it and keeps its moment under the finger; two zoom; a finger held still reads values.
const STILL_PX = 8;
const HOLD_MS = 350;
const LEAST_APART_PX = 24;

export function follow(area, chart) {
  const fingers = new Map();
  let from = null; // the gesture: view and fingers at its begin
  let isMoved = false;
  let isReading = false;
  let timer = 0;

  const x = event => event.clientX - chart.plot().left;

  function begin() {
    from = { view: { ...chart.view() }, at: [...fingers.values()] };
  }

  function drag() {
    const { left, width } = chart.plot();
    const perPixel = (from.view.to - from.view.from) / width;
    const [a, b] = [...fingers.values()];
    if (b === undefined) {
      const by = (from.at[0] - a) * perPixel;
      chart.show(from.view.from + by, from.view.to + by);
      return;
    }
    // The moments that were under the two fingers stay under them.
    const [a0, b0] = from.at.map(v => v - left);
    const apart = Math.abs(b - a) < LEAST_APART_PX ? LEAST_APART_PX * Math.sign(b - a || 1) : b - a;
    const scale = Math.abs((b0 - a0) * perPixel / apart);
    const start = from.view.from + a0 * perPixel - (a - left) * scale;
    chart.show(start, start + width * scale);
  }

  area.addEventListener("pointerdown", event => {
    if (event.button !== 0) { return; }
    area.setPointerCapture(event.pointerId);
    fingers.set(event.pointerId, event.clientX);
    clearTimeout(timer);
    isReading = false;
    if (fingers.size === 1) {
      isMoved = false;
      chart.point(x(event));
      timer = setTimeout(() => { isReading = !isMoved; }, HOLD_MS);
    } else {
      isMoved = true;
    }
    begin();
  });

  area.addEventListener("pointermove", event => {
    if (!fingers.has(event.pointerId)) {
      if (event.pointerType === "mouse") { chart.point(x(event)); }
      return;
    }
    fingers.set(event.pointerId, event.clientX);
    if (isReading) {
      chart.point(x(event));
    } else if (isMoved || Math.abs(event.clientX - from.at[0]) > STILL_PX) {
      isMoved = true;
      drag();
    }
  });

  function lift(event) {
    if (!fingers.delete(event.pointerId)) { return; }
    clearTimeout(timer);
    if (fingers.size > 0) {
      begin();
    } else if (isMoved) {
      chart.settle();
    }
  }
  area.addEventListener("pointerup", lift);
  area.addEventListener("pointercancel", lift);
  area.addEventListener("pointerleave", event => { if (event.pointerType === "mouse" && fingers.size === 0) { chart.pointNowhere(); } });

  area.addEventListener("wheel", event => {
    const isSideways = Math.abs(event.deltaX) > Math.abs(event.deltaY);
    if (!event.ctrlKey && !isSideways) { return; } // the page scrolls
    event.preventDefault();
    if (isSideways) { chart.move(event.deltaX / 1000); } else { chart.zoom(event.deltaY > 0 ? 1.2 : 1 / 1.2); }
  }, { passive: false });

  area.addEventListener("keydown", event => {
    const keys = {
      ArrowLeft: () => chart.step(event.shiftKey ? -20 : -1),
      ArrowRight: () => chart.step(event.shiftKey ? 20 : 1),
      Home: chart.home,
      End: chart.end,
      PageUp: () => chart.move(-0.5),
      PageDown: () => chart.move(0.5),
      "+": () => chart.zoom(0.5),
      "=": () => chart.zoom(0.5),
      "-": () => chart.zoom(2),
      Escape: chart.pointNowhere,
    };
    const act = keys[event.key];
    if (!act || event.ctrlKey || event.metaKey || event.altKey) { return; }
    event.preventDefault();
    act();
  });
}
