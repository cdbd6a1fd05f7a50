/**
 * Beginnings of the months' names in languages that rigs write: English, German, French, Italian, Spanish, Dutch,
 * Portuguese, Polish, Czech. A beginning that means two months in two of them is not listed. From memory.
 */
const BEGINNINGS: readonly string[] = [
  'jan jän ene gen led sty janv',
  'feb fév fev úno uno lut',
  'mar mär mrz maa bře bre mrt',
  'apr avr abr kwi dub',
  'may mai mag maj kvě kve mei',
  'jun juin giu cze červen',
  'jul juil lug lip července červenec',
  'aug aou aoû ago sie srp',
  'sep set wrz zář zar',
  'oct okt ott out paź paz říj rij',
  'nov lis',
  'dec déc dez dic gru pro',
];

const MONTHS = BEGINNINGS.flatMap((names, i) =>
  names.split(' ').map((name) => [name, i + 1] as const),
).toSorted((a, b) => b[0].length - a[0].length);

/** One to twelve by its name, short or long, with or without a point; null where it is none. */
export function monthOf(name: string): number | null {
  const text = name.normalize('NFC').toLowerCase().replace(/\.$/, '');
  return MONTHS.find(([beginning]) => text.startsWith(beginning))?.[1] ?? null;
}
