import type { TextOptions } from '../reports/text/page.ts';
import { colourLevel, hasUnicode, textWidth } from './colour.ts';
import type { CommonOptions } from './context.ts';
import type { Shell } from './shell.ts';
import { VERSION } from './version.ts';

/** Whether `-o` names a file: `-` is standard output. */
export function goesToFile(output: string | undefined): boolean {
  return output !== undefined && output !== '-';
}

/**
 * How a text is to be set, decided once for all commands: on a terminal by what it is and what the user asked for; in
 * a file always 80 columns without colour, whatever terminal the command was given on.
 */
export function textOptions(
  shell: Shell,
  options: Pick<CommonOptions, 'color'> & { readonly output?: string },
): TextOptions {
  const toFile = goesToFile(options.output);
  return {
    version: VERSION,
    width: toFile ? 80 : textWidth(shell),
    colour: toFile ? 0 : colourLevel(shell, options.color, 'stdout'),
    unicode: toFile || hasUnicode(shell),
  };
}
