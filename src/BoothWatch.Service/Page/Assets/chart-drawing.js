// Draws the past with uPlot: degrees, margin, and lanes for coats and verdicts, one above the other on one time axis.
const LANES = ["wait", "slow down", "spray", "coats"];
const AXIS_PX = 74;
const HEIGHTS = { wide: [250, 150, 150], narrow: [210, 140, 146] };
const COAT_NEAR_PX = 14;
const HALF_LANE = 0.4;

export function draw(area, { unit, zone, coats }) {
  const places = ["degrees", "margin", "lanes"].map(name => {
    const place = document.createElement("div");
    place.className = `plot ${name}`;
    area.append(place);
    return place;
  });
  const format = formats(zone);
  let data = null;
  let plots = [];
  let view = { from: 0, to: 1 };
  let index = null;

  function build() {
    const ink = colours();
    const width = area.clientWidth;
    const heights = width < 600 ? HEIGHTS.narrow : HEIGHTS.wide;
    plots.forEach(plot => plot.destroy());
    plots = [degrees(ink), margin(ink), lanes(ink)].map((options, i) =>
      new window.uPlot({ ...options, width, height: heights[i] }, columns(i), places[i]));
    setView(view.from, view.to);
    point(index);
  }

  function columns(i) {
    if (!data) { return i === 0 ? [[], [], [], []] : [[], []]; }
    return i === 0 ? [data.timeS, data.temperatureC, data.dewPointC, data.lowestFilmTemperatureC]
      : i === 1 ? [data.timeS, data.blushMarginC]
        : [data.timeS, data.verdict];
  }

  // ---- the three plots --------------------------------------------------------------------------

  function degrees(ink) {
    return {
      ...common(ink),
      scales: { x: { time: true, auto: false }, y: { range: (_, low, high) => roomy(low, high, unit === "°F" ? 8 : 4) } },
      series: [
        {},
        { stroke: ink.air, width: 1.6, points: { show: false } },
        { stroke: ink.dew, width: 3, points: { show: false } },
        { stroke: ink.film, width: 2.4, dash: [3, 5], points: { show: false } },
      ],
      axes: [silentTime(ink), yAxis(ink, unit)],
    };
  }

  function margin(ink) {
    return {
      ...common(ink),
      scales: { x: { time: true, auto: false }, y: { range: (_, low, high) => roomy(Math.min(low ?? 0, 0), Math.max(high ?? 0, 1), 2) } },
      series: [{}, { stroke: ink.margin, width: 2.4, points: { show: false } }],
      axes: [silentTime(ink), yAxis(ink, `margin, ${unit}`)],
      hooks: { drawClear: [plot => underWater(plot, ink)], draw: [plot => coatLines(plot, ink)] },
    };
  }

  function lanes(ink) {
    return {
      ...common(ink),
      scales: { x: { time: true, auto: false }, y: { range: () => [0, LANES.length] } },
      series: [{}, { show: false }],
      axes: [
        { ...timeAxis(ink), values: (_, splits, __, ___, step) => splits.map(t => format.mark(t, step)) },
        {
          stroke: ink.text, font: ink.font, size: AXIS_PX, gap: 4, grid: { show: false }, ticks: { show: false }, border: { show: false },
          splits: () => LANES.map((_, i) => i + 0.5), values: () => LANES,
        },
      ],
      hooks: { draw: [plot => { verdicts(plot, ink); coatMarks(plot, ink); }] },
    };
  }

  function common(ink) {
    const none = () => null;
    return {
      legend: { show: false },
      padding: [10, 12, 0, 0],
      tzDate: t => zoned(t, zone),
      cursor: {
        y: false,
        points: { size: 9, fill: (plot, i) => plot.series[i]._stroke ?? ink.text },
        drag: { x: false, y: false },
        bind: { mousedown: none, mouseup: none, click: none, dblclick: none, mousemove: none, mouseleave: none, mouseenter: none },
      },
      hooks: { draw: [plot => coatLines(plot, ink)] },
    };
  }

  const timeAxis = ink => ({ stroke: ink.text, font: ink.font, grid: { stroke: ink.grid, width: 1 }, ticks: { stroke: ink.grid, width: 1, size: 5 }, space: 66, size: 34 });
  const silentTime = ink => ({ ...timeAxis(ink), values: (_, splits) => splits.map(() => ""), ticks: { show: false }, size: 4 });
  const yAxis = (ink, label) => ({
    stroke: ink.text, font: ink.font, size: AXIS_PX - 22, label, labelFont: ink.font, labelSize: 22, labelGap: 0,
    grid: { stroke: ink.grid, width: 1 }, ticks: { show: false }, space: 34,
    values: (_, splits, __, ___, step) => splits.map(v => v.toFixed(Number.isInteger(step) ? 0 : 1).replace("-", "−")),
  });

  // ---- what uPlot does not draw by itself ---------------------------------------------------------

  // Below zero a coat blushes.
  function underWater(plot, ink) {
    const { ctx, bbox } = plot;
    const zero = Math.min(Math.max(plot.valToPos(0, "y", true), bbox.top), bbox.top + bbox.height);
    ctx.save();
    ctx.fillStyle = ink.blush;
    ctx.fillRect(bbox.left, zero, bbox.width, bbox.top + bbox.height - zero);
    ctx.fillStyle = ink.verdicts[0];
    ctx.fillRect(bbox.left, zero - 1, bbox.width, 2);
    ctx.restore();
  }

  function clipped(plot, work) {
    const { ctx, bbox } = plot;
    ctx.save();
    ctx.beginPath();
    ctx.rect(bbox.left, bbox.top, bbox.width, bbox.height);
    ctx.clip();
    work(ctx, bbox);
    ctx.restore();
  }

  function verdicts(plot, ink) {
    const [times, said] = plot.data;
    clipped(plot, ctx => {
      for (let i = 0; i < times.length;) {
        let end = i;
        while (end + 1 < times.length && said[end + 1] === said[i]) { end++; }
        if (said[i] !== null) {
          // A verdict lasts until the next row, or until it was last seen.
          const until = end + 1 < times.length && said[end + 1] !== null ? times[end + 1] : times[end];
          const left = plot.valToPos(times[i], "x", true);
          const top = plot.valToPos(said[i] + 0.5 + HALF_LANE, "y", true);
          ctx.fillStyle = ink.verdicts[said[i]];
          ctx.fillRect(left, top, Math.max(plot.valToPos(until, "x", true) - left, 1), plot.valToPos(said[i] + 0.5 - HALF_LANE, "y", true) - top);
        }
        i = end + 1;
      }
    });
  }

  function coatLines(plot, ink) {
    clipped(plot, (ctx, bbox) => {
      ctx.strokeStyle = ink.coat;
      ctx.lineWidth = devicePixelRatio;
      ctx.setLineDash([4 * devicePixelRatio, 4 * devicePixelRatio]);
      for (const coat of coats()) {
        const at = Math.round(plot.valToPos(coat.startS, "x", true)) + 0.5;
        ctx.beginPath();
        ctx.moveTo(at, bbox.top);
        ctx.lineTo(at, bbox.top + bbox.height);
        ctx.stroke();
      }
    });
  }

  // A box as long as the coat took, with the first letter of its kind where there is room.
  function coatMarks(plot, ink) {
    clipped(plot, ctx => {
      const top = plot.valToPos(3.5 + HALF_LANE, "y", true);
      const height = plot.valToPos(3.5 - HALF_LANE, "y", true) - top;
      const least = 18 * devicePixelRatio;
      ctx.font = `600 ${13 * devicePixelRatio}px ${ink.family}`;
      ctx.textAlign = "center";
      ctx.textBaseline = "middle";
      let free = -Infinity;
      for (const coat of coats().toSorted((a, b) => a.startS - b.startS)) {
        const left = plot.valToPos(coat.startS, "x", true);
        const width = Math.max(plot.valToPos(coat.stopS, "x", true) - left, left >= free ? least : 3 * devicePixelRatio);
        ctx.fillStyle = coat.outcome === "blushed" ? ink.verdicts[0] : ink.coat;
        ctx.fillRect(left, top, width, height);
        if (left >= free) {
          ctx.fillStyle = coat.outcome === "blushed" ? "#fff" : ink.ground;
          ctx.fillText(coat.kind[0].toUpperCase(), left + least / 2, top + height / 2);
          free = left + least + 2 * devicePixelRatio;
        }
      }
    });
  }

  // ---- for chart.js -------------------------------------------------------------------------------

  function setView(from, to) {
    view = { from, to };
    for (const plot of plots) { plot.setScale("x", { min: from, max: to }); }
  }

  function point(i) {
    index = i;
    for (const plot of plots) {
      const left = i === null || !data || data.timeS.length === 0 ? -10 : plot.valToPos(data.timeS[i], "x");
      plot.setCursor({ left, top: left < 0 ? -10 : 1 }, false);
    }
  }

  build();
  return {
    setData(next) {
      data = next;
      plots.forEach((plot, i) => plot.setData(columns(i), false));
      setView(view.from, view.to);
    },
    setView(from, to) {
      setView(from, to);
      point(index);
    },
    point,
    resize() {
      if (plots[0].width !== area.clientWidth && area.clientWidth > 0) { build(); }
    },
    recolour: build,
    plotBox: () => plots[0].over.getBoundingClientRect(),
    indexAt: x => !data || data.timeS.length === 0 ? null : plots[0].posToIdx(x),
    timeText: format.moment,
    coatNear: timeS => {
      const perPixel = (view.to - view.from) / Math.max(plots[0].over.clientWidth, 1);
      return coats()
        .map(coat => ({ coat, awayS: timeS < coat.startS ? coat.startS - timeS : Math.max(0, timeS - coat.stopS) }))
        .filter(near => near.awayS <= COAT_NEAR_PX * perPixel)
        .sort((a, b) => a.awayS - b.awayS)[0]?.coat ?? null;
    },
  };
}

function roomy(low, high, least) {
  if (low === null || high === null || !Number.isFinite(low) || !Number.isFinite(high)) { return [0, least]; }
  const spread = Math.max(0, least - (high - low)) / 2;
  const room = Math.max(high - low, least) * 0.06;
  return [low - spread - room, high + spread + room];
}

// Times of the shop, wherever the browser is; of the browser, where it does not know the shop's zone.
function zoned(timeS, zone) {
  const date = new Date(timeS * 1000);
  try { return window.uPlot.tzDate(date, zone); } catch { return date; }
}

function formats(zone) {
  const of = options => {
    try { return new Intl.DateTimeFormat("en-GB", { ...options, timeZone: zone }); } catch { return new Intl.DateTimeFormat("en-GB", options); }
  };
  const minute = of({ hour: "2-digit", minute: "2-digit", hourCycle: "h23" });
  const second = of({ hour: "2-digit", minute: "2-digit", second: "2-digit", hourCycle: "h23" });
  const day = of({ weekday: "short", day: "numeric" });
  const month = of({ day: "numeric", month: "short" });
  const moment = of({ weekday: "short", day: "numeric", month: "short", hour: "2-digit", minute: "2-digit", second: "2-digit", hourCycle: "h23" });
  return {
    mark(t, step) {
      const date = new Date(t * 1000);
      if (step >= 7 * 86400) { return month.format(date); }
      const time = minute.format(date);
      return step >= 86400 || time === "00:00" ? day.format(date) : step < 60 ? second.format(date) : time;
    },
    moment: t => moment.format(new Date(t * 1000)),
  };
}

function colours() {
  const style = getComputedStyle(document.documentElement);
  const of = name => style.getPropertyValue(name).trim();
  const family = getComputedStyle(document.body).fontFamily;
  return {
    family,
    font: `13px ${family}`,
    ground: of("--card"),
    text: of("--quiet"),
    grid: of("--line"),
    air: of("--ink"),
    dew: of("--dew"),
    film: of("--film"),
    margin: of("--margin"),
    coat: of("--quiet"),
    blush: of("--blush"),
    verdicts: [of("--wait"), of("--slow-down"), of("--spray")],
  };
}
