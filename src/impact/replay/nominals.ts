import type { DeviationList } from '../../conformance/deviation-list.ts';
import { registerCell } from '../../logs/register.ts';
import { upTo } from '../../quantity/format.ts';
import type { Session } from './session.ts';
import type { Tyre } from './tyre.ts';

/** So many equal values of a measurement were not measured one by one. Common practice, no source. */
const COPIED = 5;
/** Share of the value that the last digit must resolve: equal values of a coarser reading say nothing. */
const FINE = 0.01;

/** What is measured of every tyre and never alike to the last digit, with its unit in the register. */
const MEASURED = { mass: 'g', width: 'mm', thickness: 'mm', diameter: 'mm' } as const;
type Measured = keyof typeof MEASURED;

/** Raises DROP-53 where measurements have one value for all tyres of a construction: copied, not measured. */
export function checkNominals({ tyres }: Session, list: DeviationList): void {
  const constructions = new Map<string | null, Tyre[]>();
  for (const tyre of tyres) {
    if (tyre.row === null) continue;
    const same = constructions.get(tyre.row.construction);
    if (same === undefined) constructions.set(tyre.row.construction, [tyre]);
    else same.push(tyre);
  }
  for (const same of constructions.values()) {
    const copied = (Object.keys(MEASURED) as Measured[]).flatMap((column) => copiedIn(same, column));
    const [first] = copied;
    if (first === undefined) continue;
    const { file, line } = first.tyre.row!;
    const what = copied.map(({ text }) => text).join(' and ');
    list.add({ code: 'DROP-53', file, line, found: () => `all ${first.count} tyres have ${what}` });
  }
}

function copiedIn(
  tyres: readonly Tyre[],
  column: Measured,
): { readonly tyre: Tyre; readonly count: number; readonly text: string }[] {
  const known = tyres.filter(({ row }) => row!.measured[column] !== undefined);
  const [tyre] = known;
  if (tyre === undefined || known.length < COPIED) return [];
  const value = tyre.row!.measured[column]!;
  if (known.some(({ row }) => row!.measured[column] !== value) || resolution(tyre, column) > FINE * value)
    return [];
  return [{ tyre, count: known.length, text: `a ${column} of ${upTo(value, 3)} ${MEASURED[column]}` }];
}

/** The last digit of a cell as it was written, in the unit of the value. */
function resolution({ row }: Tyre, column: Measured): number {
  const text = registerCell(row!, column) ?? String(row!.measured[column]);
  const decimals = text.split('.')[1]?.length ?? 0;
  const scale = row!.measured[column]! / Number(text);
  return 10 ** -decimals * scale;
}
