import { describe, expect, it } from 'vitest';
import { monthOf } from '../../../src/logs/time/months.ts';
import { type TimeFormat, timeFormat } from '../../../src/logs/time/time-format.ts';

const read = (pattern: string, text: string) => {
  const format = timeFormat(pattern) as TimeFormat;
  const found = format.read(text);
  return found && [new Date(found.wall).toISOString().slice(0, 19), found.fraction, found.offset];
};

describe('timeFormat', () => {
  it.each<[string, string, string, string, number | null]>([
    ['DD.MM.YYYY hh:mm:ss', '09.03.2026 08:06:00', '2026-03-09T08:06:00', '', null],
    ['D.M.YY hh:mm', '9.3.26 08:06', '2026-03-09T08:06:00', '', null],
    ['M/D/YYYY h:mm AP', '3/9/2026 12:06 AM', '2026-03-09T00:06:00', '', null],
    ['M/D/YYYY h:mm AP', '3/9/2026 12:06 p.m.', '2026-03-09T12:06:00', '', null],
    ['D MMM YYYY hh:mm', '9 août 2026 08:06', '2026-08-09T08:06:00', '', null],
    ['DD-MMM-YY hh:mm:ss.f', '09-Mär-26 08:06:00.125', '2026-03-09T08:06:00', '125', null],
    ['YYYY-MM-DDThh:mm:ssZ', '2026-03-09T08:06:00-0530', '2026-03-09T08:06:00', '', -330],
    ['ddd DD.MM.YYYY hh:mm', 'Mo. 09.03.2026 08:06', '2026-03-09T08:06:00', '', null],
    ['ddd, D MMM YYYY hh:mm', 'mercredi, 11 mars 2026 08:06', '2026-03-11T08:06:00', '', null],
    ['YYYY/M/D(ddd) hh:mm', '2026/3/14(土) 08:06', '2026-03-14T08:06:00', '', null],
    ['YYYY年M月D日 APh:mm', '2026年3月9日 午後1:06', '2026-03-09T13:06:00', '', null],
  ])('%s reads %s', (pattern, text, wall, fraction, offset) => {
    expect(read(pattern, text)).toEqual([wall, fraction, offset]);
  });

  it.each([
    ['DD.MM.YYYY hh:mm', '31.02.2026 08:06'],
    ['DD.MM.YYYY hh:mm', '9.3.2026 08:06'],
    ['DD.MM.YYYY hh:mm', '09.13.2026 08:06'],
    ['DD.MM.YYYY hh:mm', '09.03.2026 24:06'],
    ['DD.MM.YYYY hh:mm', '09.03.2026 08:60'],
    ['M/D/YYYY h:mm AP', '3/9/2026 13:06 PM'],
    ['D MMM YYYY hh:mm', '9 Xyz 2026 08:06'],
    ['DD.MM.YYYY hh:mm', '09.03.2026 08:06 '],
    ['ddd DD.MM.YYYY hh:mm', 'Di 09.03.2026 08:06'],
    ['ddd DD.MM.YYYY hh:mm', 'Xy 09.03.2026 08:06'],
  ])('%s takes %s for no time', (pattern, text) => expect(read(pattern, text)).toBeNull());

  it.each(['hh:mm', 'DD.MM.YYYY', 'DD.MM.YYYY hh:mm hh', 'DD.MM.YYYY hh:mm Q'])(
    '%s is no format',
    (pattern) => {
      expect(timeFormat(pattern)).toHaveProperty('wrong');
    },
  );
});

describe('monthOf', () => {
  // Names of the months in English, German, French, Italian, Spanish, Polish and Czech, from memory.
  it.each([
    'January Februar mars aprile mayo June juillet Aug. września říjen nov dic',
    'Jan. févr. Mär Apr. Mai giugno lipiec août Sept paź lis déc.',
    'gennaio febbraio März kwiecień Mai juin luglio sierpień settembre Okt. listopad grudzień',
    'ene feb mar abr may jun jul ago sep oct nov dez',
  ])('%s', (names) => {
    expect(names.split(' ').map(monthOf)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
  });

  it('knows no other word', () => {
    for (const word of ['Tag', 'xyz', '', 'm']) expect(monthOf(word)).toBeNull();
  });
});
