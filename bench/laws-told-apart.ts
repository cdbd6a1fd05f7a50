/**
 * How well up-and-down tests tell laws apart: how often each law has the highest likelihood, by the law that the strengths
 * follow and the number of drops.
 *
 * Median 500 mm, standard deviation 50 mm (a tenth, where normal, lognormal and Weibull differ little in the body), steps of
 * one standard deviation, start within one of the median; tests without a finite estimate left out. Figures:
 * laws-told-apart.md.
 *
 *   npx esbuild bench/laws-told-apart.ts --bundle --platform=node --format=esm --outfile=FILE.mjs
 *   node FILE.mjs [tests a cell, default 4000] [seed, default 20261125]
 */
import { compareLaws } from '../src/statistics/goodness/compare-laws.ts';
import { type RandomStream, randomStream } from '../src/statistics/random/random-stream.ts';

const tests = Number(process.argv[2] ?? 4000);
const seed = Number(process.argv[3] ?? 20261125);
const names = ['normal', 'lognormal', 'logistic', 'weibull'] as const;

/** A strength of median 500 and standard deviation 50. */
const strengths: Record<(typeof names)[number], (random: RandomStream) => number> = {
  normal: (random) => 500 + 50 * random.normal(),
  lognormal: (random) => 500 * Math.exp(0.0993 * random.normal()),
  logistic: (random) => {
    const u = random.uniform();
    return 500 + (50 * Math.sqrt(3) * Math.log(u / (1 - u))) / Math.PI;
  },
  // Shape 12 has a standard deviation of a tenth of the median.
  weibull: (random) => 500 * (-Math.log1p(-random.uniform()) / Math.LN2) ** (1 / 12),
};

console.log(
  '| strengths | drops | without estimate | normal | lognormal | logistic | weibull | mean weight of the true law |',
);
console.log('| --- | --- | --- | --- | --- | --- | --- | --- |');
for (const truth of names) {
  for (const drops of [30, 100, 300, 1000]) {
    const wins = { normal: 0, lognormal: 0, logistic: 0, weibull: 0 };
    let fitted = 0;
    let weight = 0;
    for (let i = 0; i < tests; i++) {
      const random = randomStream(seed, i);
      let level = 500 + 50 * (2 * random.uniform() - 1);
      const counts = new Map<string, { lower: number; upper: number; count: number }>();
      for (let k = 0; k < drops; k++) {
        const failed = level >= strengths[truth](random);
        const key = `${failed}${level.toFixed(6)}`;
        const known = counts.get(key);
        if (known) known.count++;
        else
          counts.set(
            key,
            failed
              ? { lower: -Infinity, upper: level, count: 1 }
              : { lower: level, upper: Infinity, count: 1 },
          );
        level += failed ? -50 : 50;
      }
      const { fits } = compareLaws([...counts.values()], names);
      if (fits.length < names.length) continue;
      fitted++;
      wins[fits[0]!.law]++;
      weight += fits.find((f) => f.law === truth)!.weight;
    }
    const percent = (n: number) => `${Math.round((100 * n) / fitted)} %`;
    console.log(
      `| ${truth} | ${drops} | ${Math.round((100 * (tests - fitted)) / tests)} % | ${names.map((n) => percent(wins[n])).join(' | ')} | ${(weight / fitted).toFixed(2)} |`,
    );
  }
}
