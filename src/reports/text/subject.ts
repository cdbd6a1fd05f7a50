import { fixed, plain } from '../../quantity/amount.ts';
import { counted } from '../../quantity/format.ts';
import type { ImpactResult } from '../../result/analysis.ts';
import { listed } from './names.ts';
import { named, type Page, paragraph, versioned } from './page.ts';

const LABEL = 15;

/** What was tested, by which versions of which documents, and on how much evidence the rest stands. */
export function subject(page: Page, result: ImpactResult, version: string): string[] {
  const { run, protocol, rig, constructions, specification } = result;
  const rows: [string, string][] = [
    ['run', run === null ? 'none: logs analysed by themselves' : named(run)],
    [
      'protocol',
      `${versioned(protocol.id, protocol.version)}, ${named(protocol.method)}${titled(protocol.title)}`,
    ],
    ['rig', rig === null ? 'not stated' : versioned(rig.id, rig.config)],
    [
      constructions.length > 1 ? 'constructions' : 'construction',
      constructions.length === 0
        ? 'not stated'
        : listed(
            constructions.map(({ id, revision }) => versioned(id, revision)),
            6,
          ),
    ],
    ['specification', specification === null ? 'none' : versioned(specification.id, specification.version)],
    ['energy', energyText(result)],
    ['sample', sampleText(result)],
  ];
  const assumed = result.defaults.filter((text) => text.trim() !== '');
  if (assumed.length > 0) rows.push(['assumed', assumed.join('; ')]);
  rows.push(['evaluated by', `tirelab ${version}`]);
  return rows.flatMap(([label, text]) => {
    const [first = '', ...rest] = paragraph(page, text, 2 + LABEL);
    return [`  ${page.ink.dim(label.padEnd(LABEL))}${first.trimStart()}`, ...rest];
  });
}

function titled(title: string | null): string {
  return title === null ? '' : ` (${named(title)})`;
}

function energyText({ energy }: ImpactResult): string {
  const { definition, gravity, gravityFrom, mass, massFrom } = energy;
  const meaning = definition === 'potential' ? ', m·g·h' : definition === 'kinetic' ? ', ½·m·v²' : '';
  const falling =
    mass === null ? `m as logged drop by drop (${massFrom})` : `m = ${massText(mass)} (${massFrom})`;
  return `${definition.replaceAll('-', ' ')}${meaning}; ${falling}; g = ${plain(Number(gravity.toFixed(5)))} m/s² (${gravityFrom})`;
}

function massText(mass: number): string {
  const written = plain(mass);
  return `${(written.split('.')[1]?.length ?? 0) < 3 ? fixed(mass, 3) : written} kg`;
}

function sampleText({ sample, conformance, path }: ImpactResult): string {
  const { specimens, drops, validDrops, failures, censored } = sample;
  const survived = path.filter(({ used, outcome }) => used && outcome === 'survived').length;
  const tyres = counted(specimens, 'tyre');
  const out = conformance.excluded > 0 ? `, ${counted(conformance.excluded, 'drop')} left out` : '';
  const valid =
    drops === validDrops
      ? `${counted(drops, 'drop')}, all valid`
      : `${counted(drops, 'drop')}, ${validDrops} valid`;
  const outcome = `${failures} failed, ${survived} survived`;
  const open = censored === null ? '' : `; ${counted(censored, 'tyre')} with strength open on one side`;
  return `${tyres}; ${valid}${out}: ${outcome}${open}`;
}
