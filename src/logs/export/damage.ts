/**
 * What a spreadsheet does to cells that it takes for something else: `2.10` becomes `02. Okt`, `12E4` becomes
 * `1.2E+05`, a formula without a result `#DIV/0!`. Common practice, no source.
 */
const ERROR_VALUE = /^#(?:DIV\/0!|N\/A|NAME\?|NULL!|NUM!|REF!|VALUE!|SPILL!|CALC!|WERT!|ZAHL!|BEZUG!|NV)$/i;
const MONTH = '(?:jan|feb|m[aä]r|mrz|apr|ma[iy]|jun|jul|aug|se?p|o[kc]t|nov|de[cz])[a-zä]{0,6}';
const MADE_A_DATE = new RegExp(
  `^(?:\\d{1,2}[.]? ?-?${MONTH}(?:[-. ]\\d{2,4})?|${MONTH}[-. ]\\d{2,4}|\\d{4}-\\d\\d-\\d\\d[ T]00:00:00)$`,
  'i',
);
const MADE_A_NUMBER = /^\d(?:[.,]\d+)?E\+\d{2,3}$/;

/** What happened to a number's cell, or null. */
export function numberDamage(text: string): string | null {
  if (ERROR_VALUE.test(text)) return "a spreadsheet's error";
  return MADE_A_DATE.test(text) ? 'a date that a spreadsheet made of a number' : null;
}

/** What happened to an id's cell, or null. */
export function idDamage(text: string): string | null {
  if (ERROR_VALUE.test(text)) return "a spreadsheet's error";
  if (MADE_A_NUMBER.test(text)) return 'a number that a spreadsheet made of an id';
  return MADE_A_DATE.test(text) ? 'a date that a spreadsheet made of an id' : null;
}

/** An id pattern (`#` a digit, `@` a letter) as a regular expression. */
export function idPattern(pattern: string): RegExp {
  const parts = Array.from(pattern, (character) => {
    if (character === '#') return '\\d';
    return character === '@' ? '\\p{L}' : character.replace(/[\\^$.*+?()[\]{}|/]/, '\\$&');
  });
  return new RegExp(`^${parts.join('')}$`, 'u');
}
