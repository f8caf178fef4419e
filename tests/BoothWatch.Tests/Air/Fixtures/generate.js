// Writes psychrolib-saturation.csv, psychrolib-states.csv and psychrolib-pressure.csv beside this file.
// Run: npm install && npm run generate
import { writeFileSync } from 'node:fs';
import psychrolib from 'psychrolib';

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
