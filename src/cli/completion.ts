import type { Command } from 'commander';

/** The words that a shell may offer: of each command its name, its summary, its options and what they may be. */
interface Offered {
  readonly name: string;
  readonly summary: string;
  readonly options: readonly {
    readonly flag: string;
    readonly summary: string;
    readonly takesValue: boolean;
  }[];
  readonly choices: readonly string[];
}

/** Writes the completion script of one shell, from the same tree that `--help` prints. */
export const completions: Readonly<Record<'bash' | 'zsh' | 'fish', (program: Command) => string>> = {
  bash: (program) => {
    const cases = offered(program).map(({ name, options, choices }) => {
      const words = [...options.map(({ flag }) => flag), ...choices];
      return `    ${name}) words='${words.join(' ')}' ;;`;
    });
    return `# tirelab completion for bash: source <(tirelab completion bash)
_tirelab() {
  local current=\${COMP_WORDS[COMP_CWORD]} command=\${COMP_WORDS[1]} words
  if [ "$COMP_CWORD" -eq 1 ]; then
    words='${names(program).join(' ')} --help --version'
  else
    case $command in
${cases.join('\n')}
    *) words= ;;
    esac
  fi
  COMPREPLY=($(compgen -W "$words" -- "$current"))
}
complete -o default -F _tirelab tirelab
`;
  },
  zsh: (program) => {
    const commands = offered(program).map(({ name, summary }) => `    '${name}:${zshQuoted(summary)}'`);
    const cases = offered(program).map(({ name, options, choices }) => {
      const flags = options.map(
        ({ flag, summary, takesValue }) =>
          `'${flag}${takesValue ? '=' : ''}[${zshQuoted(summary)}]${takesValue ? ':value:_files' : ''}'`,
      );
      const words = choices.length > 0 ? [`'1:name:(${choices.join(' ')})'`] : [`'*:file:_files'`];
      return `    ${name}) _arguments ${[...flags, ...words].join(' ')} ;;`;
    });
    return `#compdef tirelab
# tirelab completion for zsh: source <(tirelab completion zsh)
_tirelab() {
  local -a commands
  commands=(
${commands.join('\n')}
  )
  if (( CURRENT == 2 )); then
    _describe 'command' commands
    return
  fi
  local command=$words[2]
  shift words
  (( CURRENT-- ))
  case $command in
${cases.join('\n')}
  esac
}
compdef _tirelab tirelab
`;
  },
  fish: (program) => {
    const lines = offered(program).flatMap(({ name, summary, options, choices }) => [
      `complete -c tirelab -n __fish_use_subcommand -a ${name} -d '${fishQuoted(summary)}'`,
      ...options.map(
        ({ flag, summary: about, takesValue }) =>
          `complete -c tirelab -n '__fish_seen_subcommand_from ${name}' -l ${flag.slice(2)}${takesValue ? ' -r' : ''} -d '${fishQuoted(about)}'`,
      ),
      ...(choices.length > 0
        ? [`complete -c tirelab -n '__fish_seen_subcommand_from ${name}' -f -a '${choices.join(' ')}'`]
        : []),
    ]);
    return `# tirelab completion for fish: tirelab completion fish | source\n${lines.join('\n')}\n`;
  },
};

function names(program: Command): string[] {
  return [...program.commands.map((command) => command.name()), 'help'];
}

function offered(program: Command): Offered[] {
  return program.commands.map((command) => ({
    name: command.name(),
    summary: command.summary() || command.description(),
    options: [...command.options, ...program.options]
      .filter(({ long }) => long !== undefined && long !== null && long !== '--version')
      .map(({ long, description, required, optional }) => ({
        flag: long!,
        summary: description,
        takesValue: required || optional,
      })),
    choices: command.registeredArguments.flatMap(({ argChoices }) => argChoices ?? []),
  }));
}

function zshQuoted(words: string): string {
  return words.replaceAll("'", "'\\''").replace(/[[\]:]/g, '\\$&');
}

function fishQuoted(words: string): string {
  return words.replace(/['\\]/g, '\\$&');
}
