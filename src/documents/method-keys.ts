import type { ImpactMethod } from './kinds.ts';

/** The keys that belong to some methods only, with an example of each for messages. */
const EXAMPLES = {
  start: 'a height such as "500 mm"',
  step: '"25 mm", or a ratio such as "5 %"',
  levels: '[400 mm, 450 mm]',
  perLevel: '12',
  survivalsToRaise: '2',
  guess: '{ lowest: 400 mm, highest: 600 mm, spread: 40 mm }',
  limits: '{ min: 100 mm, max: 1200 mm }',
} as const;

export type MethodKey = keyof typeof EXAMPLES;

export function exampleOf(key: MethodKey): string {
  return EXAMPLES[key];
}

/** Which of these keys a method needs, and which have nothing to do with it. */
export interface MethodKeys {
  readonly needed: readonly MethodKey[];
  readonly foreign: readonly MethodKey[];
}

const STEPS: MethodKeys = {
  needed: ['start', 'step'],
  foreign: ['levels', 'perLevel', 'survivalsToRaise', 'guess'],
};

export const METHOD_KEYS: Readonly<Record<ImpactMethod, MethodKeys>> = {
  'up-and-down': STEPS,
  'transformed-up-and-down': {
    needed: ['start', 'step', 'survivalsToRaise'],
    foreign: ['levels', 'perLevel', 'guess'],
  },
  'rising-height': STEPS,
  'fixed-level': { needed: ['levels'], foreign: ['start', 'step', 'survivalsToRaise', 'guess'] },
  langlie: {
    needed: ['limits'],
    foreign: ['start', 'step', 'levels', 'perLevel', 'survivalsToRaise', 'guess'],
  },
  'd-optimal': {
    needed: ['limits', 'guess'],
    foreign: ['start', 'step', 'levels', 'perLevel', 'survivalsToRaise'],
  },
};

/** The methods that a key belongs to. */
export function methodsWith(key: MethodKey): ImpactMethod[] {
  return (Object.keys(METHOD_KEYS) as ImpactMethod[]).filter(
    (method) => !METHOD_KEYS[method].foreign.includes(key),
  );
}
