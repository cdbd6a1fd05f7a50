import { DROP_COLUMNS } from '../logs/drop-columns.ts';
import { chosen, type Draft, type Question } from './draft-profile.ts';

/** Answers by question; a question without one stays a key to fill in. */
export type Answers = ReadonlyMap<Question, string>;

/**
 * A drafted rig as YAML. A key without a value has not been settled: the rig is refused until it is, with the key
 * named.
 *
 * @param id of the rig
 */
export function draftText(draft: Draft, id: string, answers: Answers): string {
  const { look, marks, formats } = draft;
  const { sample } = look;
  const lines = new Lines(draft.questions, answers);
  const isWorkbook = sample.separator === null && sample.widths === null;
  if (sample.separator !== null && sample.separator !== ',')
    lines.put('separator', JSON.stringify(sample.separator));
  if (sample.widths !== null) lines.put('widths', `[${sample.widths.join(', ')}]`);
  if (!lines.asked('decimal') && !isWorkbook && marks.decimal !== null)
    lines.put('decimal', `"${marks.decimal}"`);
  if (marks.thousands !== null) lines.put('thousands', JSON.stringify(marks.thousands));
  if (!lines.asked('encoding') && sample.encodings[0] !== 'utf-8')
    lines.put('encoding', sample.encodings[0]!);
  if (!lines.asked('sheet') && isWorkbook && sample.sheets[0] !== undefined)
    lines.put('sheet', scalar(sample.sheets[0]));
  if (look.preamble > 0) lines.put('preamble', 'until-header');
  if (look.header.length > 1) lines.put('header', `[${look.header.join(', ')}]`);
  if (look.footer.length > 0) lines.put('footer', list(look.footer));
  if (look.restarts) lines.put('restarts', 'true');
  if (look.sentinels.length > 0)
    lines.put('sentinels', list(look.sentinels), 'found among numbers: see that all mean "no value"');
  columns(draft, lines);
  words(draft, lines, 'outcomes', ['failed', 'survived', 'not-evaluable']);
  words(draft, lines, 'valid', ['yes', 'no']);
  time(draft, lines, isWorkbook ? 'date-cells' : formats[0]);
  lines.put('fingerprint', `"${look.fingerprint}"`, "another rig's export is refused by it");
  return [
    '# Drafted from an export. See that it says what the rig does; a key without a value is still to settle.',
    'format: tirelab.rig/1',
    `id: ${scalar(id)}`,
    '# mass: 8.000 kg             # falling mass, where the protocol or the log does not have it',
    'export:',
    ...lines.all,
    '',
  ].join('\n');
}

function columns({ look }: Draft, lines: Lines): void {
  lines.add('  columns:');
  const taken = new Set<string>();
  for (const name of [...DROP_COLUMNS.map((kind) => kind.name), 'date']) {
    const asked = `columns.${name}`;
    const column = chosen(look, name);
    if (lines.asked(asked, 4)) continue;
    if (!column || taken.has(column.title)) continue;
    taken.add(column.title);
    const unit = lines.question(`${asked}.unit`);
    if (!unit) {
      lines.add(`    ${name}: ${scalar(column.title)}`);
      continue;
    }
    const answer = lines.answer(unit);
    lines.add(`    ${name}:`, `      name: ${scalar(column.title)}`);
    if (answer === null) lines.add(`      # TO SETTLE: ${unit.ask}`, '      unit:');
    else lines.add(`      unit: ${scalar(answer)}`);
  }
  const rest = look.columns
    .filter(({ title }) => title !== '' && !taken.has(title))
    .map(({ title }) => title);
  if (rest.length > 0) lines.add(`    # not read: ${rest.map((title) => scalar(title)).join(', ')}`);
}

function words({ questions }: Draft, lines: Lines, key: string, meanings: readonly string[]): void {
  const asked = questions.filter((question) => question.key === key);
  if (asked.length === 0) return;
  const open = asked.filter((question) => lines.answer(question) === null);
  lines.add(`  ${key}:`);
  for (const { ask } of open) lines.add(`    # TO SETTLE: ${ask}`);
  for (const meaning of meanings) {
    const meant = asked.filter((question) => lines.answer(question) === meaning).map(({ word }) => word!);
    if (meant.length > 0) lines.add(`    ${meaning}: ${list(meant)}`);
    // The third meaning is rare: it is no open key unless a word is said to have it.
    else if (open.length > 0 && meaning !== 'not-evaluable') lines.add(`    ${meaning}:`);
  }
}

function time({ questions }: Draft, lines: Lines, format: string | undefined): void {
  const asked = questions.filter(({ key }) => key.startsWith('time.'));
  if (asked.length === 0) return;
  lines.add('  time:');
  const isAsked = asked.some(({ key }) => key === 'time.format');
  if (!isAsked && format !== undefined) lines.add(`    format: ${scalar(format)}`);
  for (const question of asked) lines.settle(question, 4);
}

class Lines {
  readonly all: string[] = [];
  readonly #questions: readonly Question[];
  readonly #answers: Answers;

  constructor(questions: readonly Question[], answers: Answers) {
    this.#questions = questions;
    this.#answers = answers;
  }

  add(...lines: string[]): void {
    this.all.push(...lines);
  }

  put(key: string, value: string, note?: string): void {
    this.all.push(`  ${key}: ${value}${note === undefined ? '' : `   # ${note}`}`);
  }

  question(key: string): Question | undefined {
    return this.#questions.find((question) => question.key === key);
  }

  answer(question: Question): string | null {
    return this.#answers.get(question) ?? null;
  }

  /** Writes the key of a question, answered or open; false where it was none. */
  asked(key: string, indent = 2): boolean {
    const question = this.question(key);
    if (question) this.settle(question, indent);
    return question !== undefined;
  }

  settle(question: Question, indent: number): void {
    const blank = ' '.repeat(indent);
    const name = question.key.split('.').at(-1)!;
    const answer = this.answer(question);
    if (answer !== null) {
      this.all.push(`${blank}${name}: ${scalar(answer)}`);
      return;
    }
    const choices =
      question.choices.length === 0 ? '' : `: ${question.choices.map((it) => scalar(it)).join(', ')}`;
    this.all.push(`${blank}# TO SETTLE: ${oneLine(question.ask + choices)}`, `${blank}${name}:`);
  }
}

function oneLine(text: string): string {
  return text.replaceAll(/[\r\n]+/g, ' ');
}

function list(words: readonly string[]): string {
  return `[${words.map(scalar).join(', ')}]`;
}

/** Quoted where YAML, of whatever age, could take it for something else than text. */
function scalar(text: string): string {
  const isPlain = /^\p{L}[\p{L}\p{N}_./-]*(?: [\p{L}\p{N}_./-]+)*$/u.test(text);
  const isWord = /^(?:y|n|yes|no|true|false|on|off|null|nan|inf)$/i.test(text);
  return isPlain && !isWord ? text : JSON.stringify(text);
}
