import type { ListedDeviation } from '../../conformance/deviation.ts';
import { DeviationList } from '../../conformance/deviation-list.ts';
import { quote } from '../../problem/echo.ts';
import { significant } from '../../quantity/format.ts';
import type { TyreLife } from './lives.ts';

/** Share of a life beyond which the distance between two looks blurs it (common practice, no source). */
const WIDEST_LOOK = 0.1;

/** Departures that the outcomes show: other parts that failed, looks too far apart, several causes. */
export function lifeDeviations(lives: readonly TyreLife[]): readonly ListedDeviation[] {
  const list = new DeviationList();
  for (const life of lives) {
    const { file, line, specimen, cause, blame, seenWhole, upper, failed } = life;
    const place = { file, line, specimen };
    if (blame === 'other') {
      list.add({
        code: 'DRUM-28',
        found: () => `ended by ${quote(cause ?? '')}, suspended at ${km(seenWhole)}`,
        ...place,
      });
    }
    if (failed && upper - seenWhole > WIDEST_LOOK * upper) {
      const found = () =>
        `failed between ${km(seenWhole)} and ${km(upper)}, ${significant((100 * (upper - seenWhole)) / upper, 2)} % of its life apart`;
      list.add({ code: 'DRUM-23', found, ...place });
    }
  }
  const causes = [
    ...new Set(lives.flatMap(({ failed, cause }) => (failed && cause !== null ? [cause] : []))),
  ];
  if (causes.length > 1) {
    const found = () =>
      `tyres failed by ${causes.length} causes: ${causes
        .slice(0, 6)
        .map((cause) => quote(cause))
        .join(', ')}`;
    list.add({ code: 'DRUM-44', found });
  }
  return list.listed();
}

/** What the causes leave unclear, for the reader to look at. */
export function unclearCauses(lives: readonly TyreLife[]): string[] {
  return lives
    .filter(({ blame, failed }) => failed && blame === 'unclear')
    .map(
      ({ file, line, cause }) =>
        `${file}:${line}: the cause ${quote(cause ?? '')} names a part that is not the tyre, but not first: taken as a failure of the tyre`,
    );
}

function km(distance: number): string {
  return `${significant(distance, 5)} km`;
}
