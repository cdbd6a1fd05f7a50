import { specimensOf } from '../impact/rules/method-rules.ts';
import { type Carrying, MOST_DROPS } from './carry-out.ts';
import { type Design, ruleOf } from './design.ts';

/**
 * Tests in which each site of a specimen is a series of its own: on each specimen (one, where the stop rule does not count
 * them) each site is hit by the rule, from the start again, until the rule stops or asks for another specimen. A failure
 * ends the specimen unless the protocol goes on at a new site.
 */
export function bySites(design: Design): Carrying {
  const { protocol } = design;
  const { specimens = 1, ...ofSeries } = protocol.stop ?? {};
  const stop = Object.keys(ofSeries).length > 0 ? ofSeries : null;
  const rule = ruleOf({ ...design, protocol: { ...protocol, stop } });
  const sites = protocol.sites.perSpecimen ?? 1;
  const { goesOnAfterFailure } = specimensOf(protocol);
  return (tyres, drawsEffects, levels, stream, into) => {
    let drop = 0;
    for (let specimen = 0; specimen < specimens; specimen++) {
      const effect = drawsEffects ? stream.normal() : 0;
      let hits = 0;
      let isOver = false;
      for (let site = 0; site < sites && !isOver; site++) {
        let state = rule.start;
        for (let hit = 1; ; hit++) {
          const advice = rule.advice(state);
          if (advice.decision === 'stop' || (hit > 1 && advice.specimen === 'new')) break;
          if (drop === MOST_DROPS) return false;
          const level = levels.place(advice.height);
          const failed = stream.uniform() < tyres.chance(levels.energy[level]!, effect, hits++);
          into.level[drop] = level;
          into.failed[drop] = failed ? 1 : 0;
          into.specimen[drop++] = specimen;
          isOver = failed && !goesOnAfterFailure;
          const outcome = failed ? 'failed' : 'survived';
          state = rule.step(state, { height: advice.height, outcome, specimen: '', hit });
          if (isOver) break;
        }
      }
    }
    into.size = drop;
    into.specimens = specimens;
    return true;
  };
}
