/** Words of what only some tests have: several samples, waiting numbers, repeated tests, other laws, effects, the rig's budget. */
export const englishEvidence = {
  session: {
    provisional: 'Provisional: no verdict may be given until this is settled.',
    samples: 'Samples of the session',
    apart: 'Each sample is estimated by itself; nothing is pooled over constructions or rigs.',
    sample: 'sample',
    role: 'role',
    roles: { candidate: 'candidate', reference: 'reference' } as Record<string, string>,
    failed: 'failed',
    ofValid: (failed: number, valid: number) => `${failed} of ${valid}`,
    repeats: 'Repeated',
    masses: 'Falling masses that were not the stated ones',
    repeatsRun: (of: { run: string; path: string; reason: string; approver: string }) =>
      `Repeats run ${of.run} (${of.path}) for ${of.reason}, approved by ${of.approver}; both are kept.`,
    inPlaceOf: (of: { specimen: string; replaces: string; reason: string; approver: string }) =>
      `${of.specimen} was tested in place of ${of.replaces} for ${of.reason}, approved by ${of.approver}; both are kept.`,
    massCorrected: (of: { rig: string | null; stated: string; used: string; drops: string }) =>
      `Falling mass${of.rig === null ? '' : ` of ${of.rig}`} ${of.used} instead of the stated ${of.stated} in ${of.drops}; the energies go by it.`,
  },
  laws: {
    heading: 'Other laws of strength',
    law: 'law',
    logLikelihood: 'log-likelihood',
    weight: 'Akaike weight',
    levels: (law: string) => `Level by level, ${law}`,
    statistic: 'statistic',
    degrees: 'degrees of freedom',
    deviance: 'deviance',
    pearson: "Pearson's sum",
  },
  regression: {
    heading: 'Effects of conditions',
    notDone: (why: string) => `Not carried out: ${why}`,
    effect: 'effect on strength',
    test: 'likelihood-ratio test',
    per: (unit: string, per: string) => `${unit}/${per}`,
  },
  budget: {
    heading: 'Uncertainty of the rig',
    ofDrops: 'of the drops',
    ofRig: 'of the rig',
    combined: 'combined',
    withRig: 'interval with the rig',
    standard:
      'Standard uncertainties: that of the drops shrinks with their number, that of the rig is common to all and does not.',
    of: 'of',
    source: 'source',
    scope: 'scope',
    scopes: { common: 'common', drop: 'drop' },
    adds: 'adds to the energy',
    infinite: 'infinite',
    inputs: {
      mass: 'falling mass',
      gravity: 'gravity',
      height: 'height',
      friction: 'friction',
      pressure: 'pressure',
      temperature: 'temperature',
    } as Record<string, string>,
    oneDrop: (of: {
      energy: string;
      height: string;
      common: string;
      drop: string;
      whole: string;
      degrees: string;
    }) =>
      `One drop of ${of.energy} (${of.height}): common ${of.common}, from drop to drop ${of.drop}, which is in the spread already, together ${of.whole} with ${of.degrees} effective degrees of freedom.`,
    drawn: (of: {
      agrees: boolean;
      drawn: string;
      propagated: string;
      trials: string;
      seed: string;
      tolerance: string;
    }) =>
      `${of.agrees ? 'Drawing the inputs agrees' : 'Drawing the inputs does NOT agree'}: ${of.drawn} against ${of.propagated} by propagation (${of.trials} draws, seed ${of.seed}, ends within ${of.tolerance}).`,
  },
};
