import { quote } from '../problem/echo.ts';
import { block, optional } from './blocks.ts';
import { date } from './date.ts';
import { name, pin, prose, word } from './fields.ts';
import { Findings, type YamlDocument } from './findings.ts';
import type { Waiver } from './kinds.ts';
import { once } from './once.ts';
import { type Fields, readFields, type Whole } from './read-fields.ts';

/** Who may approve: never the lab, which would waive its own result. */
const ROLES = ['quality', 'technical', 'safety'] as const;

const scopeShape = once(() => ({
  specification: pin('Specification whose criterion is waived, as id@version.'),
  criterion: name('Id of the criterion.'),
  construction: pin('Construction for which it is waived, as id@revision.'),
  batches: optional(prose('Batches to which it is limited, for people.')),
  market: optional(prose('Market to which it is limited, for people.')),
}));

/** The keys of a waiver. */
export const waiverShape = once(() => ({
  format: word(['tirelab.waiver/1'], 'What this file is.'),
  id: name('Code of the waiver.'),
  title: optional(prose('What it is about, for people.')),
  scope: block(scopeShape(), 'What is waived, and for what: nothing beyond it.'),
  owner: prose('Who answers for it.'),
  role: word(
    ROLES,
    'In which role the owner approves: quality, technical, or safety. Safety criteria need safety.',
  ),
  reason: prose('Why the construction may go on though the criterion is not met.'),
  expires: date('Last day on which it counts; afterwards it is as if it were not there.'),
  risk: optional(prose('What may come of it.')),
  action: optional(prose('What is done to make up for it.')),
}));

/**
 * A waiver from its document.
 *
 * @throws InputError with everything that is wrong with it.
 */
export function waiver(document: YamlDocument): Waiver {
  const findings = new Findings(document);
  const fields = readFields(waiverShape(), document.value, [], findings);
  checkPins(fields, findings);
  findings.throwIfAny();
  const whole = fields as Whole<ReturnType<typeof waiverShape>>;
  const { specification, criterion, construction, batches, market } = whole.scope;
  return {
    format: whole.format,
    id: whole.id,
    title: whole.title ?? null,
    specification: `${specification.id}@${specification.version}`,
    criterion,
    construction: `${construction.id}@${construction.version}`,
    batches: batches ?? null,
    market: market ?? null,
    owner: whole.owner,
    role: whole.role,
    reason: whole.reason,
    expires: whole.expires,
    risk: whole.risk ?? null,
    action: whole.action ?? null,
    source: document.source,
  };
}

/** A waiver stands for one version and one revision: what comes after has to earn its own. */
function checkPins({ scope }: Fields<ReturnType<typeof waiverShape>>, findings: Findings): void {
  for (const [key, of] of [
    ['specification', 'version'],
    ['construction', 'revision'],
  ] as const) {
    const pinned = scope?.[key];
    if (pinned === undefined || pinned.version !== null) continue;
    const message = `found ${quote(pinned.id)} without a ${of}, expected id@${of}; a waiver stands for one ${of}`;
    findings.add(['scope', key], 'missing-version', message);
  }
}
