import { Command, Option } from 'commander';
import type { MarkdownPictures } from '../../reports/markdown/markdown.ts';
import type { ReportedRun } from '../../result/report.ts';
import type { CommandContext, CommonOptions } from '../context.ts';
import { despiteOption, reasonsOf } from '../despite-option.ts';
import { destination } from '../destination.ts';
import { drumRunner } from '../drum-runner.ts';
import { languageOption } from '../language-option.ts';
import { progressLine } from '../progress.ts';
import { EXIT } from '../shell.ts';
import { VERSION } from '../version.ts';

interface ReportOptions extends CommonOptions {
  readonly kind: 'page' | 'full';
  readonly format: 'html' | 'markdown';
  readonly pictures: MarkdownPictures;
  readonly language: 'en' | 'de';
  readonly despite?: readonly string[];
  readonly output?: string;
  readonly force?: boolean;
  readonly exitZero?: boolean;
}

const EXAMPLES = `
Examples:
  tirelab report fixtures/demo/run.yaml -o page.html
  tirelab report --kind full fixtures/demo/run.yaml -o report.html
  tirelab report --format markdown --language de fixtures/demo/run.yaml`;

/** `tirelab report`: the one page for the product team, and the full report for the auditor. */
export function reportCommand({ shell, act }: CommandContext): Command {
  return new Command('report')
    .summary('the one-page summary, and the full report')
    .description(
      'Analyses runs and reports them: a page on which a product manager decides, or the full report that an auditor accepts (ISO/IEC 17025, 7.8). One file, readable without a network and without script. The exit status is the verdict, as of analyze.',
    )
    .argument('<run...>', 'RUN.yaml; several constructions are compared as well, as compare does')
    .addOption(new Option('--kind <name>', 'what to report').choices(['page', 'full']).default('page'))
    .addOption(new Option('--format <name>', 'how to set it').choices(['html', 'markdown']).default('html'))
    .addOption(
      new Option('--pictures <where>', 'of Markdown: within the file, or told in words only')
        .choices(['inline', 'words'])
        .default('inline'),
    )
    .addOption(languageOption())
    .addOption(despiteOption())
    .option('-o, --output <file>', 'write to a file instead of standard output')
    .option('--force', 'replace the file if it exists')
    .option('--exit-zero', 'exit 0 whatever the verdict')
    .addHelpText('after', EXAMPLES)
    .action((runs: string[], _options: unknown, command: Command) =>
      act(command, async () => {
        const { kind, format, pictures, language, output, force, exitZero, ...options } =
          command.optsWithGlobals<ReportOptions>();
        const despite = reasonsOf(options.despite);
        const target = destination(shell, output, force === true);
        const { reportedRuns } = await import('../../jobs/report.ts');
        const { reportFormats, reportKinds } = await import('../../reports/report-formats.ts');
        const { languages } = await import('../../reports/words/language.ts');
        const progress = progressLine(shell, command.optsWithGlobals<CommonOptions>(), 'bytes', () =>
          performance.now(),
        );
        const tests = await reportedRuns(runs, {
          runner: drumRunner,
          onProgress: progress.update,
        }).finally(progress.end);
        const compared = await comparison(runs, tests, despite);
        await target.put(
          reportFormats[format](reportKinds[kind](tests, languages[language], VERSION, compared)),
        );
        const { exitStatus } = await import('../../verdict/exit-status.ts');
        const statuses = exitZero ? [] : tests.map(({ result }) => exitStatus(result));
        // A failure goes before what is undecided.
        return [EXIT.notMet, EXIT.undecided].find((status) => statuses.includes(status)) ?? EXIT.done;
      }),
    );
}

async function comparison(
  paths: readonly string[],
  runs: readonly ReportedRun[],
  despite: ReadonlyMap<string, string>,
) {
  const { comparisonOfRuns } = await import('../../jobs/reporting/comparison.ts');
  return comparisonOfRuns(paths, runs, despite);
}
