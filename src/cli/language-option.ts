import { Option } from 'commander';

/** `--language` of the commands that write reports: of words and numbers; text for the terminal is English. */
export function languageOption(): Option {
  return new Option('--language <name>', 'of words and numbers in HTML and Markdown reports')
    .choices(['en', 'de'])
    .default('en');
}
