/** The cells of a line whose columns are told by their place, and where in the line each begins. */
export interface PlacedCells {
  readonly cells: string[];
  readonly starts: number[];
}

/**
 * Cuts a line into columns of so many characters each, a character being one of Unicode's, however wide it is shown;
 * the blanks around a cell are padding.
 * A line that ends early has empty cells, unless the file breaks off in it; what stands behind the last column is a
 * cell too many.
 *
 * @param isWhole whether a line break ends the line
 */
export function cutAt(line: string, widths: readonly number[], isWhole: boolean): PlacedCells {
  const characters = Array.from(line);
  const cells: string[] = [];
  const starts: number[] = [];
  if (line.trim() === '') return { cells: [''], starts: [0] };
  let at = 0;
  let start = 0;
  for (const width of widths) {
    if (!isWhole && at >= characters.length) break;
    const cell = characters.slice(at, at + width).join('');
    const text = cell.trim();
    cells.push(text);
    starts.push(text === '' ? Math.min(start, line.length) : start + cell.indexOf(text));
    at += width;
    start += cell.length;
  }
  const rest = characters.slice(at).join('');
  if (rest.trim() !== '') {
    cells.push(rest.trim());
    starts.push(start + rest.indexOf(rest.trim()));
  }
  return { cells, starts };
}
