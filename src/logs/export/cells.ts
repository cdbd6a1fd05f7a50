import { quote } from '../../problem/echo.ts';
import type { ProblemList } from '../../problem/problem.ts';
import { convert } from '../../quantity/units.ts';
import { CellReader, type Range } from '../cells.ts';
import type { Column } from '../columns.ts';
import type { Row } from '../row.ts';
import type { ExportColumn } from './columns.ts';
import { idDamage, idPattern, numberDamage } from './damage.ts';
import type { ImportTally } from './import-report.ts';
import { type NumberForm, readFormed } from './number-form.ts';
import type { ExportProfile } from './profile.ts';

/** Reads the cells of an export: words for "no value" are counted, numbers read as the profile says. */
export class ExportCells extends CellReader {
  readonly form: NumberForm;
  readonly #tally: ImportTally;
  readonly #sentinels: Sentinels;
  readonly #own = new Map<Column, Sentinels>();
  readonly #patterns = new Map<string, RegExp>();

  constructor(file: string, problems: ProblemList, profile: ExportProfile, tally: ImportTally) {
    super(file, problems, profile.dialect);
    const { decimal, thousands, sentinels } = profile.dialect;
    this.form = { decimal: profile.isDecimalStated ? decimal : null, thousands };
    this.#tally = tally;
    this.#sentinels = new Sentinels(sentinels, this.form);
  }

  override text(row: Row, column: Column | undefined): string | null {
    const text = super.text(row, column);
    return text === null || this.#isEmptied(text, column!) ? null : text;
  }

  protected override filled(row: Row, column: Column | undefined): string | null {
    return this.text(row, column);
  }

  override quantity(row: Row, column: Column | undefined, range: Range, isNeeded = false): number | null {
    const text = column && row.cells[column.index]!.trim();
    if (!text || this.#isEmptied(text, column)) return null;
    const settle = isNeeded ? '' : '; where it stands for no value, the profile lists it (export.sentinels)';
    const damage = numberDamage(text);
    if (damage !== null) {
      const message = `${column.title}: found ${quote(text)}, ${damage}, expected the number as the rig wrote it; export the log again${settle}`;
      this.problem(row, column, 'damaged-cell', message);
      return null;
    }
    const read = readFormed(text, this.form);
    if (typeof read !== 'number') {
      this.problem(row, column, 'not-a-number', `${column.title}: ${read.wrong}${settle}`);
      return null;
    }
    return this.#inRange(row, column as ExportColumn, read, range, settle);
  }

  override id(row: Row, column: Column | undefined): string | null {
    const text = this.text(row, column);
    if (text === null) return null;
    const pattern = (column as ExportColumn).rule?.pattern ?? null;
    if (pattern === null) return this.undamaged(row, column!, text);
    if (this.#pattern(pattern).test(text)) return text;
    const damage = idDamage(text);
    const message = `${column!.title}: found ${quote(text)}${damage === null ? '' : `, ${damage}`}, expected an id as ${quote(pattern)}; write it as the lab has it, or correct the pattern (export.columns)`;
    this.problem(row, column!, damage === null ? 'strange-id' : 'damaged-cell', message);
    return null;
  }

  #inRange(row: Row, column: ExportColumn, read: number, range: Range, settle: string): number | null {
    const unit = column.unit ?? range.unit;
    const value = convert(read, unit, range.unit) - (column.rule?.ambient ?? 0);
    if (this.isInside(value, range)) {
      if (!isSameUnit(unit, range.unit)) this.#tally.convert(column.title, unit, range.unit);
      return value;
    }
    this.outOfRange(row, column, range, `${settle}; or another unit was meant (export.columns)`);
    return null;
  }

  #isEmptied(text: string, column: Column): boolean {
    const own = this.#ownSentinels(column);
    const isOne = this.#sentinels.has(text) || (own?.has(text) ?? false);
    if (isOne) this.#tally.empty(column.title);
    return isOne;
  }

  #ownSentinels(column: Column): Sentinels | null {
    const { rule } = column as Partial<ExportColumn>;
    if (!rule || rule.sentinels.length === 0) return null;
    let own = this.#own.get(column);
    if (!own) {
      own = new Sentinels(rule.sentinels, this.form);
      this.#own.set(column, own);
    }
    return own;
  }

  #pattern(pattern: string): RegExp {
    const known = this.#patterns.get(pattern) ?? idPattern(pattern);
    this.#patterns.set(pattern, known);
    return known;
  }
}

/** Two spellings of one unit, such as ° and deg. */
function isSameUnit(one: string, other: string): boolean {
  return one === other || (convert(1, one, other) === 1 && convert(0, one, other) === 0);
}

/** Words and numbers that mean "no value"; numbers go by their value: -999 is -999.0. */
class Sentinels {
  readonly #words: ReadonlySet<string>;
  readonly #numbers: ReadonlySet<number>;
  readonly #form: NumberForm;

  constructor(words: readonly string[], form: NumberForm) {
    this.#form = form;
    this.#words = new Set(words.map((word) => word.trim()));
    // The profile may write its numbers with a decimal point, or as the rig does.
    const numbers = words.flatMap((word) => [Number(word), readFormed(word, form)]);
    this.#numbers = new Set(
      numbers.filter((it) => typeof it === 'number' && Number.isFinite(it)) as number[],
    );
  }

  has(text: string): boolean {
    if (this.#words.has(text)) return true;
    if (this.#numbers.size === 0) return false;
    const read = readFormed(text, this.#form);
    return typeof read === 'number' && this.#numbers.has(read);
  }
}
