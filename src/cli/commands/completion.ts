import { Argument, Command } from 'commander';
import type { CommandContext } from '../context.ts';
import { EXIT, write } from '../shell.ts';

const EXAMPLES = `
Examples:
  source <(tirelab completion bash)
  tirelab completion fish | source`;

/** `tirelab completion SHELL`: the script that lets a shell complete commands, options and names. */
export function completionCommand({ shell, act }: CommandContext): Command {
  return new Command('completion')
    .summary('print the completion script of a shell')
    .description('Prints the script that lets a shell complete commands, options and names.')
    .addArgument(new Argument('<shell>', 'which shell').choices(['bash', 'zsh', 'fish']))
    .addHelpText('after', EXAMPLES)
    .action((name: 'bash' | 'zsh' | 'fish', _options: unknown, command: Command) =>
      act(command, async () => {
        const { completions } = await import('../completion.ts');
        await write(shell.stdout, completions[name](command.parent!));
        return EXIT.done;
      }),
    );
}
