import { quote } from '../problem/echo.ts';
import { readNumber, readQuantity } from '../quantity/quantity.ts';
import {
  degreesFromReliability,
  type Statement,
  standardUncertainty,
} from '../statistics/uncertainty/standard-uncertainty.ts';
import { optional } from './blocks.ts';
import { name, number, share, word } from './fields.ts';
import type { Findings } from './findings.ts';
import { once } from './once.ts';
import { type Fields, readEach } from './read-fields.ts';
import { UNCERTAIN_INPUTS, type UncertainInput, type UncertaintySource } from './uncertainty-source.ts';
import type { Path } from './yaml-value.ts';

const INPUTS = Object.keys(UNCERTAIN_INPUTS) as UncertainInput[];
const LAWS = ['rectangular', 'triangular', 'arcsine'] as const;

/** One entry of `uncertainty`. */
export const uncertaintyShape = once(() => ({
  of: word(
    INPUTS,
    'What is uncertain: falling mass, local gravity, drop height, loss of energy on the way down (friction), and the pressure or temperature of the tyre by its gauge.',
  ),
  source: name('Where it comes from: a certificate, a resolution, repeated settings.'),
  standard: optional(name('Standard uncertainty, with its unit.')),
  expanded: optional(name('Expanded uncertainty of a certificate, with its unit; "factor" goes with it.')),
  factor: optional(number('Coverage factor of the expanded uncertainty, commonly 2.', { above: 0 })),
  within: optional(name('Half width of what it may be at most, with its unit: a tolerance, half a digit.')),
  law: optional(word(LAWS, 'How it lies within the half width; rectangular where it is left out.')),
  degrees: optional(
    name('Degrees of freedom of the uncertainty: readings less one, or infinite where it is taken as known.'),
  ),
  reliability: optional(
    share(
      'In place of degrees: how well the uncertainty itself is known, 25 % stands for 8 degrees (JCGM 100, G.4.2).',
    ),
  ),
  scope: optional(
    word(
      ['common', 'drop'],
      'common: the same in all drops (calibration, weighing), the default; drop: drawn anew with each drop, and so in the spread already.',
    ),
  ),
  sensitivity: optional(
    name(
      'Of pressure: relative change of the energy for a relative change of pressure, about 1; of temperature: change of the energy per kelvin, such as 0.5 %.',
    ),
  ),
}));

type EntryFields = Fields<ReturnType<typeof uncertaintyShape>>;

/** The entries of `uncertainty`; what is wrong with them goes to `findings`. */
export function uncertaintyOf(findings: Findings): UncertaintySource[] {
  return readEach(uncertaintyShape(), ['uncertainty'], findings).flatMap(({ path, fields }) => {
    const { of, source } = fields;
    if (of === undefined || source === undefined) return [];
    const statement = statementOf(fields, of, path, findings);
    const degrees = degreesOf(fields, path, findings);
    const sensitivity = sensitivityOf(fields, of, path, findings);
    if (statement === null || degrees === null || sensitivity === undefined) return [];
    return [
      {
        of,
        source,
        statement,
        standardUncertainty: standardUncertainty(statement),
        degrees,
        scope: fields.scope ?? 'common',
        sensitivity,
      },
    ];
  });
}

function statementOf(
  fields: EntryFields,
  of: UncertainInput,
  path: Path,
  findings: Findings,
): Statement | null {
  const given = (['standard', 'expanded', 'within'] as const).filter(
    (key) => findings.valueAt([...path, key]) !== undefined,
  );
  if (given.length !== 1) {
    const found = given.length === 0 ? 'none of them' : given.map((key) => `"${key}"`).join(' and ');
    const message = `found ${found}, expected one of standard, expanded, within: how uncertain the ${of} is; give exactly one`;
    findings.add(given[1] ? [...path, given[1]] : path, 'one-of', message, given[1] ? 'key' : 'value');
    return null;
  }
  const key = given[0]!;
  misplaced(fields, { law: key === 'within', factor: key === 'expanded' }, path, findings);
  const text = fields[key];
  if (text === undefined) return null;
  const unit = UNCERTAIN_INPUTS[of];
  const reading = readQuantity(text, unit);
  const value = reading.ok && reading.value.tolerance === null ? reading.value.value : null;
  if (value === null || !(value > 0)) {
    const message = reading.ok
      ? `found ${quote(text)}, expected an uncertainty above 0 ${unit === '1' ? '%' : unit}: nothing is known without doubt; state it, or leave the entry out`
      : reading.why;
    findings.add([...path, key], 'bad-uncertainty', message);
    return null;
  }
  if (key === 'standard') return { kind: 'standard', uncertainty: value };
  if (key === 'within') return { kind: fields.law ?? 'rectangular', halfWidth: value };
  if (fields.factor === undefined) {
    if (findings.valueAt([...path, 'factor']) === undefined) {
      const message = 'the key "factor" is missing, by which the certificate expanded it; add it, commonly 2';
      findings.add(path, 'missing-key', message);
    }
    return null;
  }
  return { kind: 'expanded', uncertainty: value, factor: fields.factor };
}

function misplaced(
  fields: EntryFields,
  fits: { readonly law: boolean; readonly factor: boolean },
  path: Path,
  findings: Findings,
): void {
  for (const [key, with_] of [
    ['law', 'within'],
    ['factor', 'expanded'],
  ] as const) {
    if (fields[key] === undefined || fits[key]) continue;
    findings.add(
      [...path, key],
      'key-out-of-place',
      `found "${key}" without "${with_}", to which it belongs; remove it`,
      'key',
    );
  }
}

function degreesOf({ degrees, reliability }: EntryFields, path: Path, findings: Findings): number | null {
  const has = (key: string) => findings.valueAt([...path, key]) !== undefined;
  if (has('degrees') === has('reliability')) {
    const found = has('degrees') ? '"degrees" and "reliability"' : 'neither "degrees" nor "reliability"';
    const message = `found ${found}, expected one of them: readings less one (degrees: 9), how well the uncertainty is known (reliability: 25 %), or degrees: infinite where it is taken as known`;
    findings.add(has('degrees') ? [...path, 'degrees'] : path, 'degrees-of-freedom', message);
    return null;
  }
  if (reliability !== undefined) return degreesFromReliability(reliability);
  if (degrees === undefined) return null;
  if (degrees === 'infinite') return Number.POSITIVE_INFINITY;
  const value = readNumber(degrees);
  if (value !== null && value >= 1) return value;
  const message = `found ${quote(degrees)}, expected 1 or more degrees of freedom, or infinite`;
  findings.add([...path, 'degrees'], 'degrees-of-freedom', message);
  return null;
}

/** Null where the input has none; undefined where it is wrong, and was reported. */
function sensitivityOf(
  { sensitivity }: EntryFields,
  of: UncertainInput,
  path: Path,
  findings: Findings,
): number | null | undefined {
  const isCondition = of === 'pressure' || of === 'temperature';
  const isGiven = findings.valueAt([...path, 'sensitivity']) !== undefined;
  if (!isCondition) {
    if (!isGiven) return null;
    const message = `found "sensitivity" with ${of}, whose effect follows from m·g·h; remove it`;
    findings.add([...path, 'sensitivity'], 'key-out-of-place', message, 'key');
    return undefined;
  }
  if (!isGiven) {
    const message = `the key "sensitivity" is missing: what the energy does with the ${of}; add it, such as ${of === 'pressure' ? '1' : '0.5 %'}`;
    findings.add(path, 'missing-key', message);
    return undefined;
  }
  if (sensitivity === undefined) return undefined;
  const bare = readNumber(sensitivity);
  const reading = bare === null ? readQuantity(sensitivity, '1') : null;
  const value = bare ?? (reading?.ok && reading.value.tolerance === null ? reading.value.value : null);
  if (value !== null && value !== 0 && Math.abs(value) < 100) return value;
  const message = `found ${quote(sensitivity)}, expected a number other than 0, such as ${of === 'pressure' ? '1' : '0.5 %'}`;
  findings.add([...path, 'sensitivity'], 'bad-sensitivity', message);
  return undefined;
}
