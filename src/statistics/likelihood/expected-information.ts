import type { StandardLaw } from '../laws/standard-law.ts';
import type { Covariance, Fit } from './fit.ts';
import type { Sample } from './observation.ts';

/**
 * Covariance of location and scale from the expected information, for failures and survivals only: what probit analyses
 * by iteratively reweighted least squares print. The project prints the observed one (Fit.covariance); this is here to
 * compare with print. At each level the information of z is f²/(F·S) for each hit.
 *
 * @throws RangeError for an observation closed on both sides, whose inspections are not in the data
 */
export function expectedCovariance(sample: Sample, law: StandardLaw, fit: Fit): Covariance {
  let aa = 0;
  let ab = 0;
  let bb = 0;
  for (let i = 0; i < sample.size; i++) {
    const low = sample.lower[i]!;
    const high = sample.upper[i]!;
    if (low !== -Infinity && high !== Infinity)
      throw new RangeError(
        `observation (${low}, ${high}] is closed on both sides: its expected information is not known`,
      );
    const z = ((low === -Infinity ? high : low) - fit.location) / fit.scale;
    const weight = sample.count[i]! * Math.exp(2 * law.logPdf(z) - law.logCdf(z) - law.logSf(z));
    aa += weight;
    ab += weight * z;
    bb += weight * z * z;
  }
  const factor = (fit.scale * fit.scale) / (aa * bb - ab * ab);
  return { location: bb * factor, cross: -ab * factor, scale: aa * factor };
}
