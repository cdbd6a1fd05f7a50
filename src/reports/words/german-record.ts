import { GERMAN_EFFECTS } from './german-effects.ts';
import { GERMAN_FINDINGS } from './german-findings.ts';
import { GERMAN_NOTES } from './german-notes.ts';
import { GERMAN_TITLES } from './german-titles.ts';
import type { Line } from './line.ts';
import { translator } from './translate.ts';

/** Words that stand alone in a gap. */
const WORDS: Readonly<Record<string, string>> = {
  survived: 'überstanden',
  failed: 'versagt',
  'not-evaluable': 'nicht auswertbar',
  'no outcome': 'kein Ergebnis',
  none: 'keines',
  'an outcome that could not be judged': 'ein nicht beurteilbares Ergebnis',
  protocol: 'Prüfplan',
  rig: 'Prüfstand',
  'the rim': 'der Felge',
  pressure: 'Druck',
  temperature: 'Temperatur',
  load: 'Last',
  speed: 'Geschwindigkeit',
  mass: 'Masse',
  height: 'Höhe',
  width: 'Breite',
  thickness: 'Dicke',
  diameter: 'Durchmesser',
  'pressure falls': 'Druck fällt',
  'load jumps': 'Last springt',
  'axle height jumps': 'Achshöhe springt',
  'vibration rises': 'Schwingung steigt',
  'temperature rises': 'Temperatur steigt',
  'tyre temperature': 'Reifentemperatur',
  'ambient temperature': 'Umgebungstemperatur',
  upwards: 'nach oben',
  downwards: 'nach unten',
  'on both sides': 'nach beiden Seiten',
  normal: 'Normalverteilung',
  lognormal: 'Lognormalverteilung',
  logistic: 'logistische Verteilung',
  weibull: 'Weibull-Verteilung',
  'two parallel cuts': 'zwei parallele Schnitte',
  'one of two cuts goes through': 'einer von zwei Schnitten geht durch',
  'tube cut, casing whole': 'Schlauch zerschnitten, Karkasse ganz',
  'casing cut under the tread': 'Karkasse unter der Lauffläche zerschnitten',
  'casing cut in the sidewall': 'Karkasse in der Seitenwand zerschnitten',
  'bead core broken': 'Wulstkern gebrochen',
  'cord visible or printed': 'Fäden sichtbar oder durchgedrückt',
  'air burped at the bead': 'Luft am Wulst entwichen',
  'bead off the rim': 'Wulst von der Felge',
  'leak at the valve': 'Leck am Ventil',
  'leak at the seam of the tube': 'Leck an der Schlauchnaht',
  'leak at the rim tape': 'Leck am Felgenband',
  'something else': 'etwas anderes',
};

/** Nouns that are counted: one, several, and of several. */
const COUNTED: Readonly<Record<string, readonly [string, string, string?]>> = {
  drop: ['Schlag', 'Schläge', 'Schlägen'],
  'valid drop': ['gültiger Schlag', 'gültige Schläge', 'gültigen Schlägen'],
  row: ['Zeile', 'Zeilen'],
  tyre: ['Reifen', 'Reifen'],
  specimen: ['Reifen', 'Reifen'],
  reversal: ['Umkehrung', 'Umkehrungen'],
  hit: ['Schlag', 'Schläge', 'Schlägen'],
  site: ['Stelle', 'Stellen'],
  rise: ['Anstieg', 'Anstiege', 'Anstiegen'],
  move: ['Schritt', 'Schritte', 'Schritten'],
  survival: ['überstandener Schlag', 'überstandene Schläge', 'überstandenen Schlägen'],
  other: ['anderer', 'andere', 'anderen'],
  stop: ['Halt', 'Halten', 'Halten'],
  'whole minute': ['volle Minute', 'volle Minuten'],
  'more deviation': ['weitere Abweichung', 'weitere Abweichungen'],
};

const note = translator([...GERMAN_NOTES, ...GERMAN_FINDINGS, ...GERMAN_EFFECTS], written);
const finding = translator(GERMAN_FINDINGS, written);
const effect = translator(GERMAN_EFFECTS, written);

/** A sentence of a result in German; as it stands, and marked so, where it is new. */
export function germanRecord(sentence: string): Line {
  const said = note(sentence) ?? behindFile(sentence);
  return said === null ? { text: sentence, isRecord: true } : { text: said };
}

/** `drops.csv:12: …`: what is said of a line of a file. */
function behindFile(sentence: string): string | null {
  const [, place, rest] = /^(\S+?(?::\d+)*): (.+)$/su.exec(sentence) ?? [];
  const said = rest === undefined ? null : note(rest);
  return said === null ? null : `${place}: ${said}`;
}

/**
 * What a deviation says, in German. Where what was found has no German words, its title and what it does to the
 * estimate stand before the record's own sentence.
 */
export function germanDeviation({
  code,
  message,
}: {
  readonly code: string;
  readonly message: string;
}): Line {
  const body = message.replace(/\.$/u, '');
  // What was found and what it does stand to both sides of a semicolon, and each may hold others.
  for (let at = body.indexOf('; '); at >= 0; at = body.indexOf('; ', at + 1)) {
    const [found, does] = [finding(body.slice(0, at)), effect(body.slice(at + 2))];
    if (found !== null && does !== null) return { text: `${found}; ${does}.` };
  }
  const last = body.lastIndexOf('; ');
  const does = last < 0 ? null : effect(body.slice(last + 2));
  const title = GERMAN_TITLES.get(code);
  const known = [title, does].filter((text) => text !== undefined && text !== null).join('; ');
  return { text: known === '' ? message : `${known}. (${message})`, isRecord: true };
}

/** What stands in a gap: a sentence again, a word, a count, or names and numbers with their decimal mark. */
function written(gap: string, isDative: boolean): string {
  return WORDS[gap] ?? countedText(gap, isDative) ?? composed(gap) ?? note(gap) ?? numbers(gap);
}

function countedText(gap: string, isDative: boolean): string | null {
  const [, count, noun] = /^(\d+) ([a-z ]+?)s?$/u.exec(gap) ?? [];
  const words = noun === undefined ? undefined : COUNTED[noun];
  if (words === undefined) return null;
  const [one, several, ofSeveral = several] = words;
  return `${count} ${count === '1' ? one : isDative ? ofSeveral : several}`;
}

/** `rim "R-1"`, `bead-burp (air burped at the bead)`, `4 of 12 drops at 450 mm`. */
function composed(gap: string): string | null {
  const [, rim] = /^rim (".*")$/su.exec(gap) ?? [];
  if (rim !== undefined) return `Felge ${rim}`;
  const [, damage, meaning] = /^([a-z-]+) \(([a-z ,]+)\)$/u.exec(gap) ?? [];
  if (meaning !== undefined && WORDS[meaning] !== undefined) return `${damage} (${WORDS[meaning]})`;
  const [, count, all, level] = /^(\d+) of (\d+ drops?) at ([^,]+)$/u.exec(gap) ?? [];
  return all === undefined ? null : `${count} von ${countedText(all, true)} bei ${numbers(level!)}`;
}

/** Decimal commas, but in names and versions, which may have points as well. */
function numbers(gap: string): string {
  if (/["@/]|\d\.\d+\.\d/u.test(gap)) return gap;
  return gap
    .replace(/(?<=\d)\.(?=\d)/g, ',')
    .replace(/(?<=\d) to (?=[-\d])/g, ' bis ')
    .replace(/ against /g, ' gegen ')
    .replace(/(\d+) rows?\b/g, '$1 Zeilen')
    .replace(/, then /g, ', dann ')
    .replace(/ of the distance$/, ' der Strecke');
}
