import { counted } from '../../quantity/format.ts';
import type { EndurancePlan, PlannedBlock } from '../../result/endurance-plan.ts';
import { jsonText } from '../json-text.ts';
import { named, pageOf, paragraph, section, type TextOptions, versioned } from '../text/page.ts';
import { cautionList, SAFETY } from '../text/safety.ts';
import { type Column, table } from '../text/table.ts';

/** A drum test laid out beforehand, for people: hours and ends of its blocks, then what turns how often. */
export function endurancePlanText(plan: EndurancePlan, options: TextOptions): string {
  const page = pageOf(options);
  const { protocol, setting, blocks } = plan;
  const hours = total(blocks, ({ hours: of }) => of);
  const distance = total(blocks, ({ distance: of }) => of);
  const last = blocks.at(-1)!.end;
  const head = `${Number(distance.toPrecision(6))} km in ${hours.toFixed(1)} h of running, ${(hours / setting.duty).toFixed(1)} days at ${setting.duty} h a day${last === null ? '' : `, done ${iso(last)}`}.`;
  const ends = blocks.map(({ block, distance: km, speed, hours: of, days, end }) => [
    named(block),
    String(Number(km.toPrecision(6))),
    String(speed),
    of.toFixed(1),
    days.toFixed(2),
    end === null ? '' : iso(end),
  ]);
  const lines = [
    ...paragraph(page, head, 0).map((line) => page.ink.bold(line)),
    ...paragraph(
      page,
      `Protocol ${versioned(protocol.id, protocol.version)}, ${counted(blocks.length, 'block')}.`,
      0,
    ),
    ...section(page, 'Blocks', table(page, columns(['block', 'km', 'km/h', 'hours', 'days', 'ends']), ends)),
    ...section(page, 'Turns', turns(plan, page)),
    ...section(page, 'Looks at the tyres', looks(plan, page)),
    ...section(
      page,
      'Rules',
      plan.rules.flatMap((rule) => paragraph(page, rule, 2)),
    ),
    ...section(page, 'Cautions', cautionList(page, SAFETY.drum)),
    '',
    ...paragraph(
      page,
      'Stops, warming up and inspections take time beside; kilometres on a drum are not kilometres on the road.',
      0,
    ),
  ];
  return `${lines.join('\n')}\n`;
}

function turns({ setting, blocks }: EndurancePlan, page: ReturnType<typeof pageOf>): string[] {
  if (setting.diameter === null && setting.circumference === null) return [];
  const rows = blocks.map((block) => [
    named(block.block),
    whole(block.drumRevolutions),
    block.drumSpeed?.toFixed(1) ?? '',
    whole(block.cleatHits),
    block.cleatFrequency?.toFixed(2) ?? '',
    whole(block.tyreRevolutions),
  ]);
  return table(page, columns(['block', 'drum turns', '1/min', 'cleat hits', 'Hz', 'tyre turns']), rows);
}

/** Before each look the drum has to stand. */
function looks({ inspections }: EndurancePlan, page: ReturnType<typeof pageOf>): string[] {
  if (inspections.length === 0) return [];
  const rows = inspections.map(({ at, hours, time }) => [
    String(at),
    hours.toFixed(1),
    time === null ? '' : iso(time),
  ]);
  return table(page, columns(['km', 'hours', 'reached']), rows);
}

function columns(heads: readonly string[]): Column[] {
  return heads.map((head, i) => ({
    head,
    align: i === 0 ? 'left' : 'right',
    ...(i === 0 ? { least: 8 } : {}),
  }));
}

/** The document of `plan --json` for a drum test. @param version of tirelab itself */
export function endurancePlanDocument(
  { protocol, setting, blocks, inspections, rules }: EndurancePlan,
  version: string,
): string {
  const said = (end: number | null) => (end === null ? null : iso(end));
  return jsonText({
    schema: 'tirelab.plan/1',
    kind: 'endurance',
    tool: { name: 'tirelab', version },
    protocol,
    setting: { ...setting, begin: said(setting.begin) },
    blocks: blocks.map((block) => ({ ...block, end: said(block.end) })),
    inspections: inspections.map(({ time, ...look }) => ({ ...look, time: said(time) })),
    rules,
    total: {
      distance: total(blocks, ({ distance }) => distance),
      hours: total(blocks, ({ hours }) => hours),
      end: said(blocks.at(-1)!.end),
    },
  });
}

function total(blocks: readonly PlannedBlock[], of: (block: PlannedBlock) => number): number {
  return blocks.reduce((sum, block) => sum + of(block), 0);
}

function whole(value: number | null): string {
  return value === null ? '' : value.toFixed(0);
}

function iso(time: number): string {
  return new Date(Math.round(time / 1000) * 1000).toISOString().replace('.000Z', 'Z');
}
