import { fixed, percent } from '../../quantity/amount.ts';
import { counted, significant } from '../../quantity/format.ts';
import type { FieldAgreement, FieldConstruction, FieldResult } from '../../result/field.ts';
import { named, type Page, pageOf, paragraph, section, sentence, type TextOptions } from '../text/page.ts';
import { table } from '../text/table.ts';

/** Flats in the field for people: the rates compared, their ratios, what may stand for the construction, the laboratory. */
export function fieldText(result: FieldResult, options: TextOptions): string {
  const page = pageOf(options);
  const { constructions, cause, level, riders, agreement, notes, circumstances } = result;
  const what = cause === 'all' ? 'all flats' : `${cause} flats`;
  const total = constructions.reduce((sum, { distance }) => sum + distance, 0);
  const confounded = circumstances.filter(({ standing }) => standing !== 'alike');
  const head = `${sentence(what).slice(0, -1)} per 1,000 km of ${counted(constructions.length, 'construction')}: ${fixed(total, 0)} km by ${counted(riders, 'rider')}.`;
  const list = (lines: readonly string[]) => lines.flatMap((line) => paragraph(page, sentence(line), 2, 4));
  const lines = [
    ...paragraph(page, head, 0).map((line) => page.ink.bold(line)),
    ...section(page, `Rates per 1,000 km, exact ${percent(level)} limits`, rates(page, constructions)),
    ...section(page, `Riders (${what})`, list(dispersions(constructions))),
    ...section(page, `Ratios (${what})`, ratios(page, result)),
    ...section(
      page,
      'What may stand for the construction',
      list(circumstances.map(({ circumstance, standing, why }) => `${circumstance}: ${standing}; ${why}`)),
    ),
    ...(confounded.length === 0
      ? []
      : paragraph(
          page,
          'A difference of rates may be one of these circumstances: only riding them alike tells.',
        )),
    ...section(page, 'Laboratory against field', agreement === null ? [] : laboratory(page, agreement)),
    ...section(page, 'Notes', list(notes)),
  ];
  return `${lines.join('\n')}\n`;
}

function rates(page: Page, constructions: readonly FieldConstruction[]): string[] {
  const rows = constructions.flatMap(({ construction, distance, riders, rates: each }) =>
    each.map(({ cause, flats, rate, lower, upper }, i) => [
      i === 0 ? named(construction) : '',
      i === 0 ? fixed(distance, 0) : '',
      i === 0 ? String(riders) : '',
      cause,
      String(flats),
      significant(rate, 3),
      `${significant(lower, 3)} to ${significant(upper, 3)}`,
    ]),
  );
  return table(
    page,
    ['', 'km', 'riders', 'cause', 'flats', 'rate', 'limits'].map((head, i) => ({
      head,
      align: [1, 2, 4, 5].includes(i) ? 'right' : 'left',
    })),
    rows,
  );
}

function dispersions(constructions: readonly FieldConstruction[]): string[] {
  return constructions.map(({ construction, dispersion }) =>
    dispersion === null
      ? `${named(construction)}: too few riders or flats to see whether riders differ`
      : `${named(construction)}: scatter of ${dispersion.riders} riders ${significant(dispersion.ratio, 2)} times that of chance (p = ${significant(dispersion.p, 2)}), limits over riders ${significant(dispersion.lower, 3)} to ${significant(dispersion.upper, 3)}: ${dispersion.why}`,
  );
}

function ratios(page: Page, { ratios: each }: FieldResult): string[] {
  if (each.length === 0) return [];
  const rows = each.map(({ first, second, ratio, lower, upper, p, holm, why }) => [
    `${named(first)} / ${named(second)}`,
    ratio === null ? '' : significant(ratio, 3),
    why ?? `${significant(lower, 3)} to ${upper === null ? 'no limit' : significant(upper, 3)}`,
    significant(p, 2),
    significant(holm, 2),
  ]);
  return table(
    page,
    ['', 'ratio', 'limits', 'p', 'p by Holm'].map((head, i) => ({
      head,
      align: i === 0 || i === 2 ? 'left' : 'right',
    })),
    rows,
  );
}

function laboratory(page: Page, agreement: FieldAgreement): string[] {
  const { constructions, tau, chance, chanceOfFullAgreement, regression, why } = agreement;
  const rows = constructions
    .toSorted((a, b) => b.energy - a.energy)
    .map(({ construction, energy, rate }) => [
      named(construction),
      `${significant(energy, 3)} J`,
      significant(rate, 3),
    ]);
  const said = [
    ...(tau === null
      ? []
      : [
          `rank agreement (Kendall's tau) ${fixed(tau, 2)}; as much or more comes about by chance in ${oneIn(chance!)}`,
        ]),
    ...(chanceOfFullAgreement === null
      ? []
      : [`${constructions.length} constructions agree fully by chance in ${oneIn(chanceOfFullAgreement)}`]),
    why,
    ...(regression === null
      ? []
      : [
          `${significant(regression.slope, 2)} flats per 1,000 km for a joule (${percent(regression.level)} interval ${significant(regression.lower, 2)} to ${significant(regression.upper, 2)})`,
        ]),
  ];
  return [
    ...table(
      page,
      ['', 'laboratory', 'field rate'].map((head, i) => ({ head, align: i === 0 ? 'left' : 'right' })),
      rows,
    ),
    ...said.flatMap((text) => paragraph(page, sentence(text), 2, 4)),
  ];
}

function oneIn(p: number): string {
  const times = 1 / p;
  return Math.abs(times - Math.round(times)) < 1e-6 * times
    ? `1 case in ${Math.round(times)}`
    : `${percent(Number((100 * p).toPrecision(2)) / 100)} of cases`;
}
