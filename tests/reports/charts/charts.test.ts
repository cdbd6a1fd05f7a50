import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { dropsFigure } from '../../../src/reports/charts/drops.ts';
import { svgOf } from '../../../src/reports/charts/figure.ts';
import { timelineFigure } from '../../../src/reports/charts/timeline.ts';
import { languages } from '../../../src/reports/words/language.ts';
import { gallery } from './invented.ts';

const plain = { language: languages.en, name: (name: string) => name, times: 1 };
const golden = new URL('./golden/', import.meta.url);

// Golden pictures: each was looked at before it was committed. GOLDEN=write draws them anew.
describe('the pictures', () => {
  const drawn = Object.entries(gallery(plain));

  it('are of every kind', () => {
    expect(drawn.map(([kind]) => kind)).toHaveLength(12);
    for (const [kind, figure] of drawn) expect(figure, kind).not.toBeNull();
  });

  it.each(drawn)('%s is drawn as it was', (kind, figure) => {
    const file = new URL(`${kind}.svg`, golden);
    const svg = `${svgOf(figure!)}\n`;
    if (process.env.GOLDEN === 'write') {
      if (!existsSync(golden)) mkdirSync(golden);
      writeFileSync(file, svg);
    }
    expect(svg).toBe(readFileSync(file, 'utf8'));
  });

  it.each(drawn)(
    '%s has rounded coordinates, a title, a role and words for who cannot see it',
    (_, figure) => {
      const svg = svgOf(figure!);
      expect(svg).not.toMatch(/\d\.\d{3,}/);
      expect(svg).not.toMatch(/NaN|Infinity|undefined|null/);
      expect(svg).toMatch(/^<svg [^>]*role="img"[^>]*aria-labelledby="\S+" aria-describedby="\S+"/);
      expect(svg).toMatch(/<title id="[^"]+">[^<]+<\/title><desc id="[^"]+">[^<]+<\/desc>/);
    },
  );

  it('write decimals with a comma in German, and the same coordinates', () => {
    const german = gallery({ ...plain, language: languages.de });
    expect(svgOf(german.wear!)).toContain('>0,5<');
    expect(german.wear!.alternative).toContain('Grenze 0,9 mm');
    const circles = (svg: string) => svg.match(/<circle[^>]*>/g);
    expect(circles(svgOf(german.wear!))).toEqual(circles(svgOf(gallery(plain).wear!)));
  });
});

describe('hostile names', () => {
  const name = (of: string) => `${of}<script>alert(1)</script>"'&\u202e\u0000${'x'.repeat(10_000)}`;

  it.each(Object.entries(gallery({ ...plain, name })))('do not break out of %s', (_, figure) => {
    const svg = svgOf(figure!);
    expect(svg).not.toMatch(/<script|[\u0000-\u001f\u202a-\u202e\u2066-\u2069]/u);
    expect(svg.length).toBeLessThan(80_000);
  });
});

describe('drops by their falling mass', () => {
  const drop = (line: number, mass: number, outcome: 'failed' | 'survived') => ({
    line,
    specimen: `T${line}`,
    series: null,
    height: 640,
    mass,
    energy: mass * 9.80665 * 0.64,
    outcome,
    used: true,
  });
  const path = [drop(2, 8, 'failed'), drop(3, 7.7, 'survived'), drop(4, 8, 'survived')];
  const figure = (language: (typeof languages)['en']) =>
    dropsFigure(
      { path, protocol: { id: 'p', version: '1', method: 'up-and-down', title: null } },
      'd',
      language,
    )!;

  it('stand at their mass, with its name and unit', () => {
    const svg = svgOf(figure(languages.en));
    expect(svg).toContain('>falling mass (kg)<');
    expect(svg).not.toContain('height above contact');
    expect(figure(languages.en).alternative).toContain(
      '3 drops between 7.70 and 8.00 kg: 1 failed, 2 survived',
    );
    // Three drops at two masses: two places from top to bottom.
    const places = new Set([...svg.matchAll(/cy="([\d.]+)" r="4.5"/gu)].map(([, cy]) => cy));
    expect(places.size).toBeGreaterThanOrEqual(2);
    expect(svgOf(figure(languages.de))).toContain('>fallende Masse (kg)<');
  });
});

describe('a timeline', () => {
  const START = Date.UTC(2026, 0, 1);

  /** A year of minutes, one of which holds a peak and another a dip. */
  const minutes = Array.from({ length: 525_600 }, (_, i) => ({
    time: START + i * 60_000,
    running: true,
    mean: 30,
    min: i === 300_001 ? 3 : 29.9,
    max: i === 77_777 ? 99 : 30.1,
  }));
  const figure = timelineFigure(
    { channel: 'speed', unit: 'km/h', minutes, schedule: [], nights: [] },
    'year',
    languages.en,
  )!;

  it('keeps the extremes of a year in a picture of a few kilobytes', () => {
    expect(figure.alternative).toContain('between 3 km/h and 99 km/h');
    const svg = svgOf(figure);
    expect(svg.length).toBeLessThan(20_000);
    // The columns go from their least to their greatest value: one is taller than 60 of 96 parts of the plot, twice.
    const heights = [...svg.matchAll(/M\d+ ([\d.]+)V([\d.]+)/g)].map(
      ([, from, to]) => Number(from) - Number(to),
    );
    expect(heights.filter((height) => height > 30).length).toBe(2);
  });
});
