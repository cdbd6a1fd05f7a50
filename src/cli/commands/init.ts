import { basename } from 'node:path';
import { createInterface } from 'node:readline/promises';
import { Command, InvalidArgumentError } from 'commander';
import type { Question } from '../../jobs/draft-profile.ts';
import type { CommandContext } from '../context.ts';
import { destination } from '../destination.ts';
import { EXIT, type Shell, write } from '../shell.ts';

interface InitOptions {
  readonly rig: string;
  readonly output?: string;
  readonly force?: boolean;
  readonly input: boolean;
  readonly widths?: readonly number[];
  readonly quiet?: boolean;
}

const EXAMPLES = `
Asks on a terminal what the export leaves open; without one, or with --no-input, writes it as keys to
fill in, and the rig is refused until they are.

Examples:
  tirelab init --rig export.csv -o rig.yaml
  tirelab init --rig fixtures/rigs/tower-b/export.csv --no-input`;

/** `tirelab init --rig SAMPLE`: drafts the profile of a rig from one of its exports. */
export function initCommand({ shell, act }: CommandContext): Command {
  return new Command('init')
    .summary("draft a rig's profile from one of its exports")
    .description(
      "Looks at a rig's export (text or .xlsx) and drafts the rig's file: separator, code page, header,\nunits, columns. What a word, a date or a mark means is never guessed.",
    )
    .requiredOption('--rig <sample>', 'an export of the rig')
    .option('--widths <list>', 'characters of each column, where the export has no separator', widthsOf)
    .option('-o, --output <file>', 'write to a file instead of standard output')
    .option('--force', 'replace the file if it exists')
    .option('--no-input', 'never ask, even on a terminal')
    .addHelpText('after', EXAMPLES)
    .action((_options: unknown, command: Command) =>
      act(command, async () => {
        const options = command.optsWithGlobals<InitOptions>();
        const target = destination(shell, options.output, options.force === true);
        const { draftProfile } = await import('../../jobs/draft-profile.ts');
        const { draftText } = await import('../../jobs/draft-profile-text.ts');
        const draft = await draftProfile(options.rig, options.widths ?? null);
        const mayAsk = options.input && shell.stdin.isTTY === true;
        const answers = mayAsk ? await ask(shell, draft.questions) : new Map<Question, string>();
        const id = basename(options.rig).replace(/\.[^.]*$/, '') || 'rig';
        await target.put(draftText(draft, id, answers));
        const open = draft.questions.length - answers.size;
        if (open > 0 && !options.quiet) {
          const what = open === 1 ? '1 question is' : `${open} questions are`;
          await write(shell.stderr, `tirelab: ${what} still to settle: fill in the keys under "TO SETTLE"\n`);
        }
        return EXIT.done;
      }),
    );
}

/** `6,20,8` */
function widthsOf(text: string): number[] {
  const widths = text.split(',').map((part) => Number(/^\s*\d{1,4}\s*$/.test(part) ? part : 0));
  if (widths.every((width) => width > 0)) return widths;
  throw new InvalidArgumentError('Expected widths in characters, such as 6,20,8.');
}

/** Asks each question once; an empty answer leaves it open. */
async function ask(shell: Shell, questions: readonly Question[]): Promise<Map<Question, string>> {
  const answers = new Map<Question, string>();
  if (questions.length === 0) return answers;
  const { echo } = await import('../../problem/echo.ts');
  const terminal = createInterface({ input: shell.stdin, output: shell.stderr });
  try {
    for (const question of questions) {
      const { choices } = question;
      const listed = choices.map((choice, i) => `  ${i + 1}  ${echo(choice)}\n`).join('');
      await write(shell.stderr, `export.${question.key}: ${question.ask}\n${listed}`);
      const said = (
        await terminal.question(
          choices.length > 0 ? 'number or text, empty to leave open: ' : 'empty to leave open: ',
        )
      ).trim();
      const answer = /^\d+$/.test(said) ? (choices[Number(said) - 1] ?? said) : said;
      if (answer === '') continue;
      if (choices.length === 0 || choices.includes(answer)) answers.set(question, answer);
      else await write(shell.stderr, 'none of these: left open\n');
    }
  } finally {
    terminal.close();
  }
  return answers;
}
