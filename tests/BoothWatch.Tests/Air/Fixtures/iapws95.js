// Saturation pressure of water from the full equation of state IAPWS-95: the pressure at which liquid and vapour have the
// same Gibbs energy. Slow and exact, hence a reference for the short equations that BoothWatch calculates with.
// Source: IAPWS R6-95(2018), equation (6) and tables 1 and 2; check values of its table 8 are asserted in generate.js.
// Below 273.16 K the liquid is supercooled and IAPWS-95 is an extrapolation (R6-95, section 6: reasonable down to 236 K).

const gasConstant = 461.51805, criticalK = 647.096, criticalKgPerM3 = 322;

// [c, d, t, n] of terms 1 to 51
const powers = [
  [0, 1, -0.5, 0.12533547935523e-1], [0, 1, 0.875, 0.78957634722828e1], [0, 1, 1, -0.87803203303561e1],
  [0, 2, 0.5, 0.31802509345418], [0, 2, 0.75, -0.26145533859358], [0, 3, 0.375, -0.78199751687981e-2],
  [0, 4, 1, 0.88089493102134e-2], [1, 1, 4, -0.66856572307965], [1, 1, 6, 0.20433810950965],
  [1, 1, 12, -0.66212605039687e-4], [1, 2, 1, -0.19232721156002], [1, 2, 5, -0.25709043003438],
  [1, 3, 4, 0.16074868486251], [1, 4, 2, -0.40092828925807e-1], [1, 4, 13, 0.39343422603254e-6],
  [1, 5, 9, -0.75941377088144e-5], [1, 7, 3, 0.56250979351888e-3], [1, 9, 4, -0.15608652257135e-4],
  [1, 10, 11, 0.11537996422951e-8], [1, 11, 4, 0.36582165144204e-6], [1, 13, 13, -0.13251180074668e-11],
  [1, 15, 1, -0.62639586912454e-9], [2, 1, 7, -0.10793600908932], [2, 2, 1, 0.17611491008752e-1],
  [2, 2, 9, 0.22132295167546], [2, 2, 10, -0.40247669763528], [2, 3, 10, 0.58083399985759],
  [2, 4, 3, 0.49969146990806e-2], [2, 4, 7, -0.31358700712549e-1], [2, 4, 10, -0.74315929710341],
  [2, 5, 10, 0.47807329915480], [2, 6, 6, 0.20527940895948e-1], [2, 6, 10, -0.13636435110343],
  [2, 7, 10, 0.14180634400617e-1], [2, 9, 1, 0.83326504880713e-2], [2, 9, 2, -0.29052336009585e-1],
  [2, 9, 3, 0.38615085574206e-1], [2, 9, 4, -0.20393486513704e-1], [2, 9, 8, -0.16554050063734e-2],
  [2, 10, 6, 0.19955571979541e-2], [2, 10, 9, 0.15870308324157e-3], [2, 12, 8, -0.16388568342530e-4],
  [3, 3, 16, 0.43613615723811e-1], [3, 4, 22, 0.34994005463765e-1], [3, 4, 23, -0.76788197844621e-1],
  [3, 5, 23, 0.22446277332006e-1], [4, 14, 10, -0.62689710414685e-4], [6, 3, 50, -0.55711118565645e-9],
  [6, 6, 44, -0.19905718354408], [6, 6, 46, 0.31777497330738], [6, 6, 50, -0.11841182425981],
];

// [t, n, beta, gamma] of terms 52 to 54, all with d = 3, alpha = 20, epsilon = 1
const gaussians = [[0, -0.31306260323435e2, 150, 1.21], [1, 0.31546140237781e2, 150, 1.21], [4, -0.25213154341695e4, 250, 1.25]];

// [b, n, C, D] of terms 55 and 56, both with a = 3.5, B = 0.2, A = 0.32, beta = 0.3
const nonAnalytic = [[0.85, -0.14874640856724, 28, 700], [0.95, 0.31806110878444, 32, 800]];

// residual Helmholtz energy and its derivative by delta
const residual = (delta, tau) => {
  let phi = 0, slope = 0;
  const add = (term, logSlope) => { phi += term; slope += term * logSlope; };
  for (const [c, d, t, n] of powers) {
    const power = c === 0 ? 0 : delta ** c;
    add(n * delta ** d * tau ** t * Math.exp(-power), (d - c * power) / delta);
  }
  for (const [t, n, beta, gamma] of gaussians) {
    add(n * delta ** 3 * tau ** t * Math.exp(-20 * (delta - 1) ** 2 - beta * (tau - gamma) ** 2), 3 / delta - 40 * (delta - 1));
  }
  for (const [b, n, c, d] of nonAnalytic) {
    const s = (delta - 1) ** 2;
    const theta = 1 - tau + 0.32 * s ** (1 / 0.6);
    const big = theta * theta + 0.2 * s ** 3.5;
    const bigSlope = (delta - 1) * (0.32 * theta * (2 / 0.3) * s ** (1 / 0.6 - 1) + 2 * 0.2 * 3.5 * s ** 2.5);
    const psi = Math.exp(-c * s - d * (tau - 1) ** 2);
    add(n * big ** b * delta * psi, b * bigSlope / big + 1 / delta - 2 * c * (delta - 1));
  }
  return { phi, slope };
};

const pressureAt = (density, kelvin) => {
  const delta = density / criticalKgPerM3;
  return density * gasConstant * kelvin * (1 + delta * residual(delta, criticalK / kelvin).slope);
};

const densityAt = (pressure, kelvin, guess) => {
  let density = guess;
  for (let i = 0; i < 100; i++) {
    const step = density * 1e-6;
    const slope = (pressureAt(density + step, kelvin) - pressureAt(density - step, kelvin)) / (2 * step);
    const next = density - (pressureAt(density, kelvin) - pressure) / slope;
    if (Math.abs(next / density - 1) < 1e-12) return next;
    density = next;
  }
  return density;
};

export const saturation = (kelvin, guessPa) => {
  const tau = criticalK / kelvin;
  let pressure = guessPa, liquid = 1000, vapour = 0;
  for (let i = 0; i < 100; i++) {
    liquid = densityAt(pressure, kelvin, liquid);
    vapour = densityAt(pressure, kelvin, vapour || pressure / (gasConstant * kelvin));
    const gap = residual(liquid / criticalKgPerM3, tau).phi - residual(vapour / criticalKgPerM3, tau).phi + Math.log(liquid / vapour);
    const next = gasConstant * kelvin * gap / (1 / vapour - 1 / liquid);
    if (Math.abs(next / pressure - 1) < 1e-9) return { pressure: next, liquid, vapour };
    pressure = next;
  }
  throw new Error(`saturation at ${kelvin} K did not converge`);
};
