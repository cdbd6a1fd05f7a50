// Writes a drum log in plain form: `node bench/drum-generate.mjs PATH [ROWS] [SEED] [plain|semicolon]`.
// 12.1 million rows at 10 Hz are two weeks, some 919 MB. Invented data: two set speeds with noise, a load with
// noise, slow drifts of pressure and temperature, a counter, a few stops. The same seed gives the same bytes.
import { closeSync, openSync, writeSync } from 'node:fs';

const [path, rowsText = '12100000', seedText = '1', form = 'plain'] = process.argv.slice(2);
if (!path || path.startsWith('-'))
  throw new Error('usage: node bench/drum-generate.mjs PATH [ROWS] [SEED] [plain|semicolon]');
const rows = Number(rowsText);
let seed = Number(seedText) >>> 0;

/** Uniform in [0, 1): mulberry32, good enough for noise in a benchmark. */
function random() {
  seed = (seed + 0x6d2b79f5) >>> 0;
  let t = seed;
  t = Math.imul(t ^ (t >>> 15), t | 1);
  t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
  return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
}

/** Roughly normal, of unit deviation. */
const noise = () => (random() + random() + random() - 1.5) * 2;

const header =
  'time,speed [km/h],load [N],pressure [bar],tyre temperature [°C],ambient temperature [°C],distance [km],state,revolutions\n';
const handle = openSync(path, 'w');
writeSync(handle, form === 'semicolon' ? header.replaceAll(',', ';') : header);

const begin = Date.UTC(2026, 2, 2, 5, 0, 0);
let distance = 0;
let revolutions = 0;
let stop = 0;
let text = '';
for (let i = 0; i < rows; i++) {
  if (stop > 0) stop--;
  else if (random() < 2e-6) stop = 3000;
  const set = distance < 100 ? 25 : 30;
  const speed = stop > 0 ? 0 : Math.max(0, set + noise() * 0.12);
  const load = (distance < 100 ? 600 : 650) + noise() * 3;
  const pressure = 2.52 + 0.01 * Math.sin(i / 90000) + noise() * 0.004;
  const tyre = 38 + 2 * Math.sin(i / 200000) + noise() * 0.1;
  const ambient = 25 + 1.5 * Math.sin(i / 430000) + noise() * 0.05;
  distance += speed / 36000;
  revolutions += speed / 36000 / 0.00239;
  const local = new Date(begin + i * 100 + 3600000).toISOString();
  const time = local.slice(0, 21);
  text += `${time}+01:00,${speed.toFixed(2)},${load.toFixed(1)},${pressure.toFixed(2)},${tyre.toFixed(1)},${ambient.toFixed(1)},${distance.toFixed(3)},${stop > 0 ? 'stop' : 'run'},${Math.floor(revolutions)}\n`;
  if (text.length > 1 << 18 || i === rows - 1) {
    // A time keeps its point in either form: only ISO's own mark is safe behind a semicolon.
    writeSync(handle, form === 'semicolon' ? semicolons(text) : text);
    text = '';
  }
}
closeSync(handle);

function semicolons(lines) {
  return lines.replaceAll(
    /^([^,]+),(.*)$/gm,
    (_, time, rest) => `${time};${rest.replaceAll(',', ';').replaceAll('.', ',')}`,
  );
}
