import { Command, CommanderError } from 'commander';
import type { CommandContext } from './context.ts';
import { reportFailure, reportUsage } from './failure.ts';
import { EXIT, type Shell, write } from './shell.ts';
import { VERSION } from './version.ts';

/**
 * The commands by name. Each is loaded when it is asked for: what the others need would be felt at every start.
 */
const COMMANDS: Readonly<Record<string, () => Promise<(context: CommandContext) => Command>>> = {
  analyze: async () => (await import('./commands/analyze.ts')).analyzeCommand,
  archive: async () => (await import('./commands/archive.ts')).archiveCommand,
  compare: async () => (await import('./commands/compare.ts')).compareCommand,
  completion: async () => (await import('./commands/completion.ts')).completionCommand,
  explain: async () => (await import('./commands/explain.ts')).explainCommand,
  export: async () => (await import('./commands/export.ts')).exportCommand,
  field: async () => (await import('./commands/field.ts')).fieldCommand,
  gate: async () => (await import('./commands/gate.ts')).gateCommand,
  init: async () => (await import('./commands/init.ts')).initCommand,
  instruments: async () => (await import('./commands/instruments.ts')).instrumentsCommand,
  monitor: async () => (await import('./commands/monitor.ts')).monitorCommand,
  next: async () => (await import('./commands/next.ts')).nextCommand,
  plan: async () => (await import('./commands/plan.ts')).planCommand,
  repeatability: async () => (await import('./commands/repeatability.ts')).repeatabilityCommand,
  report: async () => (await import('./commands/report.ts')).reportCommand,
  rig: async () => (await import('./commands/rig.ts')).rigCommand,
  schema: async () => (await import('./commands/schema.ts')).schemaCommand,
  simulate: async () => (await import('./commands/simulate.ts')).simulateCommand,
  status: async () => (await import('./commands/status.ts')).statusCommand,
  verify: async () => (await import('./commands/verify.ts')).verifyCommand,
};

const STATUS_HELP = `
Examples:
  tirelab analyze run.yaml
  tirelab analyze --protocol P.yaml --json drops.csv
  tirelab schema protocol

Exit status:
  0    done; where something is judged, every criterion passes or is waived
  1    at least one criterion fails
  2    wrong use, or an input that cannot be read or is not valid
  3    no decision: inconclusive, not tested, or the protocol was broken
  70   a fault in the program itself
  130  interrupted; no partial file is left`;

/**
 * Runs the command line and gives the exit status. Nothing below this writes but to the shell's streams.
 *
 * @param args the words behind `tirelab`.
 */
export async function run(args: readonly string[], shell: Shell): Promise<number> {
  let status: number = EXIT.done;
  const printed: Promise<void>[] = [];
  const context: CommandContext = {
    shell,
    async act(command, work) {
      const { json, format, debug } = command.optsWithGlobals();
      try {
        status = await work();
      } catch (error) {
        status = await reportFailure(shell, error, {
          json: json === true || format === 'json',
          debug: debug === true,
        });
      }
    },
  };
  const program = await build(args, context, printed);
  if (args.length === 0) {
    await write(shell.stderr, program.helpInformation());
    return EXIT.wrongUse;
  }
  try {
    await program.parseAsync([...args], { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError)) return reportFailure(shell, error, { json: false, debug: false });
    await Promise.all(printed);
    if (error.exitCode === 0) return EXIT.done;
    // What commander calls an error it has already begun to print: help asked for in vain has no message of its own.
    return reportUsage(shell, error.message.replace(/^error: /, ''), asksForJson(args));
  }
  await Promise.all(printed);
  return status;
}

async function build(
  args: readonly string[],
  context: CommandContext,
  printed: Promise<void>[],
): Promise<Command> {
  const { shell } = context;
  const program = new Command('tirelab')
    .description(
      'Checks impact and endurance tests of bicycle tyres against their protocol, estimates what the tyres withstand, and judges it against a specification.',
    )
    .version(VERSION, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .helpCommand('help [command]', 'print the help of a command')
    .option('--color', 'colour, even where the output is no terminal')
    .option('--no-color', 'no colour, even on a terminal')
    .option('-q, --quiet', 'results and errors only, no warnings and no progress')
    .option('--debug', 'show the trace of a fault')
    .addHelpText('after', STATUS_HELP)
    .showSuggestionAfterError(true);
  for (const make of await asked(args)) program.addCommand(make(context));
  for (const command of [program, ...program.commands]) {
    command.exitOverride().configureOutput({
      writeOut: (text) => printed.push(write(shell.stdout, text)),
      writeErr: (text) => printed.push(write(shell.stderr, text)),
      getOutHelpWidth: () => 80,
      getErrHelpWidth: () => 80,
      // Said by reportUsage, once and in one form.
      outputError: () => {},
    });
  }
  return program;
}

/** The command that the words name; all of them where help, a suggestion or a completion script may need them. */
function asked(args: readonly string[]) {
  const name = args.find((word) => !word.startsWith('-')) ?? '';
  if (args.some((word) => word === '--version' || word === '-V')) return [];
  const one = name === 'completion' || !Object.hasOwn(COMMANDS, name) ? undefined : COMMANDS[name];
  return Promise.all((one === undefined ? Object.values(COMMANDS) : [one]).map((load) => load()));
}

function asksForJson(args: readonly string[]): boolean {
  return args.some(
    (word, i) =>
      word === '--json' || word === '--format=json' || (word === 'json' && args[i - 1] === '--format'),
  );
}
