import { block, list, optional } from './blocks.ts';
import { name, prose } from './fields.ts';
import { once } from './once.ts';

/**
 * What a report says beside its numbers (ISO/IEC 17025, 7.8): who asked what, by which rule it is decided and since
 * when, who answers for it. All may be left out; the report lists what is missing.
 */
export const requestShape = once(() => ({
  question: optional(prose('The question at stake, as the customer put it.')),
  decision: optional(prose('What will be decided with the answer, and by whom.')),
  customer: optional(prose('Who asked: a name or a department, and how to reach them.')),
  laboratory: optional(prose('Name and address of the laboratory.')),
  place: optional(prose('Where the work was done, where that is elsewhere.')),
  rule: optional(prose('The decision rule as agreed, with its risk.')),
  agreed: optional(prose('When the decision rule was agreed, before the test.')),
  received: optional(prose('When the tyres were received, and in what condition.')),
  tested: optional(prose('When the test was made.')),
  report: optional(name('Number of the report.')),
  issued: optional(prose('Date of issue.')),
  authorised: optional(prose('Who authorises the report.')),
  replaces: optional(prose('The report that this one replaces, and why.')),
}));

/** Pictures of the tyres that the report shows. */
export const photoShape = once(() => ({
  file: name('Path of a PNG or JPEG picture.'),
  caption: prose('What it shows: specimen, place, scale.'),
}));

export const reportShape = once(() => ({
  request: optional(block(requestShape(), 'What a report says beside its numbers.')),
  photos: optional(list(block(photoShape(), 'A picture for the report.'), 'Pictures for the report.')),
}));
