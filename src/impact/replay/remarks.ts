import { quote } from '../../problem/echo.ts';
import { counted } from '../../quantity/format.ts';
import type { Visit } from './replayed.ts';

/**
 * Beginnings of words by which operators tell that a drop was not as it should be, or that something was changed.
 * Common practice, no source.
 */
const TELLING =
  /\b(?:again|repeat|redo|slip|crooked|skew|wrong|doubt|double|twice|chang|replac|swap|patch|leak|loose|stuck|see photo|nochmal|wiederhol|wdh|schief|verrutsch|falsch|doppel|gewechselt|getauscht|geflickt|undicht|locker|s\. ?foto|fraglich|refai|refaire|de travers|chang[ée]|double choc|ripet|repet)/iu;
const SHOWN = 5;

/**
 * A sentence on remarks that should be read before the result is: free text is kept as written and never leaves a drop
 * out by itself.
 */
export function remarkNotes(visits: readonly Visit[]): string[] {
  const telling = visits.filter(({ drop, use }) => use === 'used' && TELLING.test(drop.remark ?? ''));
  if (telling.length === 0) return [];
  const said = telling.slice(0, SHOWN).map(({ drop }) => `line ${drop.line} ${quote(drop.remark!, 40)}`);
  const more = telling.length > SHOWN ? ` and ${telling.length - SHOWN} more` : '';
  return [
    `Remarks on ${counted(telling.length, 'drop')} that ${telling.length === 1 ? 'counts' : 'count'}, to be read: ${said.join(', ')}${more}; a remark leaves nothing out, a reason of the catalogue does (valid, reason).`,
  ];
}
