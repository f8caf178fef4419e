// Writes iapws95-saturation.csv and the three psychrolib-*.csv beside this file.
// Run: npm install && npm run generate
import assert from 'node:assert';
import { writeFileSync } from 'node:fs';
import psychrolib from 'psychrolib';
import { saturation } from './iapws95.js';

psychrolib.SetUnitSystem(psychrolib.SI);

const range = (first, last, step) =>
  Array.from({ length: Math.round((last - first) / step) + 1 }, (_, i) => first + i * step);

const write = (name, header, rows) =>
  writeFileSync(new URL(name, import.meta.url), [header, ...rows.map(row => row.join(','))].join('\n') + '\n');

const digits = value => value.toPrecision(9);

// psychrolib changes from ice to water at 0.01 °C.
write('psychrolib-saturation.csv', 'temperatureC,saturationPa',
  range(-60, 90, 2.5).map(t => [t, digits(psychrolib.GetSatVapPres(t))]));

write('psychrolib-states.csv',
  'temperatureC,relativeHumidityPct,pressurePa,dewOrFrostPointC,wetBulbC,humidityRatio,densityKgPerM3,enthalpyJPerKg',
  [101325, 84000].flatMap(p => range(2.5, 50, 2.5).flatMap(t => [5, 10, 20, 35, 50, 65, 80, 90, 95, 100].map(rh => {
    const [ratio, wetBulb, dewPoint, , enthalpy] = psychrolib.CalcPsychrometricsFromRelHum(t, rh / 100, p);
    return [t, rh, p, ...[dewPoint, wetBulb, ratio, psychrolib.GetMoistAirDensity(t, ratio, p), enthalpy].map(digits)];
  }))));

write('psychrolib-pressure.csv', 'altitudeM,standardPressurePa',
  range(-500, 3000, 250).map(z => [z, digits(psychrolib.GetStandardAtmPressure(z))]));

// IAPWS R6-95(2018), table 8: saturation at 275 K and 450 K.
const isNear = (actual, expected) => assert(Math.abs(actual / expected - 1) < 1e-8, `${actual} is not ${expected}`);
isNear(saturation(275, 700).pressure, 698.451167);
isNear(saturation(275, 700).liquid, 999.887406);
isNear(saturation(450, 900e3).pressure, 932203.564);
isNear(saturation(450, 900e3).vapour, 4.81200360);

write('iapws95-saturation.csv', 'temperatureC,saturationPa',
  range(-36, 90, 1).map(t => [t, digits(saturation(t + 273.15, psychrolib.GetSatVapPres(t)).pressure)]));
