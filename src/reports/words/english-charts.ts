/** Words of the pictures: titles, axes, labels, and what a person who cannot see them is told. */
export const englishCharts = {
  height: 'height above contact (mm)',
  fallingMass: 'falling mass (kg)',
  energy: 'energy (J)',
  medianEnergy: 'median failure energy (J)',
  dropInOrder: 'drop, in order',
  failed: 'failed',
  survived: 'survived',
  leftOut: 'left out',
  reversal: 'reversal',
  limit: 'limit',
  median: 'median',
  reference: 'reference',
  shareFailed: 'share failed (%)',
  shareFailedOnLawScale: 'share failed (%), Weibull scale',
  shareOfLimit: 'share of the limit (%)',
  tyreMass: 'mass of the tyre (g)',
  distance: 'distance (km)',
  medianLife: 'distance that half last (km)',
  hours: 'time (h)',
  treadDepth: 'depth of the tread (mm)',
  trueMedian: 'true median failure energy (J)',
  chanceOfVerdict: 'chance of the verdict (%)',
  outside: 'out of the band',
  pause: 'standstill',
  night: 'night, 22–6 h',
  setValue: 'set value',
  crossing: 'limit reached',
  bound: (confidence: string) => `one-sided ${confidence} bound`,
  band: (level: string) => `${level} band`,
  group: (letter: string) => `group ${letter}`,
  more: (count: number) => `and ${count} more, not drawn`,
  titles: {
    drops: 'Drops, level by level',
    response: 'Share failed over the energy',
    tyres: 'Strength of each tyre',
    criteria: 'Distance to the limits',
    comparison: 'Constructions against each other',
    massEnergy: 'Energy and mass',
    massLife: 'Life and mass',
    timeline: (channel: string) => `On the drum: ${channel}`,
    lives: 'Distance run by each tyre',
    weibull: 'Weibull plot of the distances',
    wear: 'Wear of the tread',
    characteristic: 'Chance of each verdict over the true strength',
  },
  tell: {
    drops: (of: {
      drops: string;
      lowest: string;
      highest: string;
      unit: 'mm' | 'kg';
      failed: number;
      survived: number;
      leftOut: number;
      reversals: number | null;
      shown: number;
      all: number;
    }) =>
      `${of.drops} between ${of.lowest} and ${of.highest} ${of.unit}: ${of.failed} failed, ${of.survived} survived${of.leftOut > 0 ? `, ${of.leftOut} left out` : ''}${of.reversals === null ? '' : `; reversals: ${of.reversals}`}.${of.shown < of.all ? ` The first ${of.shown} are drawn.` : ''}`,
    response: (of: { median: string | null; range: string | null; drops: string; band: string }) =>
      `The share of tyres that fail rises with the energy; ${of.median === null ? 'these outcomes give no single best curve' : `half fail at ${of.median}`}${of.range === null ? '' : ` (interval ${of.range})`}. The band is the pointwise ${of.band} interval, the strokes at its edges are ${of.drops}: above the failures, below the survivals.`,
    limit: (of: { limit: string; bound: string | null }) =>
      ` The limit is ${of.limit}${of.bound === null ? '' : `, the bound that decides ${of.bound}`}.`,
    tyres: (of: {
      closed: number;
      open: number;
      lowest: string;
      highest: string;
      shown: number;
      all: number;
    }) =>
      `${of.closed} tyres with strength known between two heights, ${of.open} with strength open on one side, drawn as arrows; all between ${of.lowest} and ${of.highest} J.${of.shown < of.all ? ` The first ${of.shown} are drawn.` : ''}`,
    criterion: (of: { id: string; share: string; asked: string; verdict: string }) =>
      `${of.id}: ${of.share} of the limit (${of.asked}); ${of.verdict}.`,
    construction: (of: { name: string; value: string; range: string | null; group: string | null }) =>
      `${of.name}: ${of.value}${of.range === null ? '' : ` (${of.range})`}${of.group === null ? '' : `, group ${of.group}`}.`,
    groups: 'Constructions that share a letter are not told apart.',
    massEnergy: (of: {
      points: number;
      lightest: string;
      heaviest: string;
      lowest: string;
      highest: string;
      unit: 'J' | 'km';
    }) =>
      `${of.points} ${of.points === 1 ? 'point' : 'points'}: mass ${of.lightest} to ${of.heaviest} g, ${of.unit === 'J' ? 'energy' : 'life'} ${of.lowest} to ${of.highest} ${of.unit}.`,
    timeline: (of: {
      channel: string;
      hours: string;
      least: string;
      most: string;
      outside: number;
      pauses: number;
    }) =>
      `${of.channel} over ${of.hours} h, between ${of.least} and ${of.most}; minutes out of the band: ${of.outside}; standstills: ${of.pauses}. Each column shows the extremes of its time.`,
    lives: (of: { failed: number; running: number; shortest: string; longest: string }) =>
      `Failed: ${of.failed}; taken off or still running unfailed, drawn as arrows: ${of.running}; ${of.shortest === of.longest ? `at ${of.longest}` : `between ${of.shortest} and ${of.longest}`} km.`,
    weibull: (of: { failed: number; running: number; shape: string | null; life: string | null }) =>
      `${of.failed} failures against their plotting positions, ${of.running} suspensions as strokes below.${of.life === null ? '' : ` The line has the shape ${of.shape} and the characteristic life ${of.life} km.`}`,
    wear: (of: { readings: number; limit: string | null; crossing: string | null }) =>
      `${of.readings} readings of the tread${of.limit === null ? '' : `, limit ${of.limit} mm`}${of.crossing === null ? '' : `; the limit is reached at ${of.crossing} km`}.`,
    characteristic: (of: { points: number; lowest: string; highest: string; even: string | null }) =>
      `Chances of pass, fail and no decision at ${of.points} true medians from ${of.lowest} to ${of.highest} J${of.even === null ? '' : `; a pass is as likely as not at ${of.even} J`}.`,
  },
};
