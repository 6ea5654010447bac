/**
 * Every sentence about bad input, in one place: the reason, and what to do. Names in braces are filled with
 * the figures of the problem. Add a line here, then use its key as the code of a `Problem`.
 */
export const catalogue = {
  // quantities as people write them
  'quantity.empty': {
    reason: 'nothing is written here.',
    remedy: 'Type a number with its unit, for example {example}.',
  },
  'quantity.not-a-number': {
    reason: '“{text}” does not begin with a number.',
    remedy: 'Type a number with its unit, for example {example}.',
  },
  'quantity.unknown-unit': {
    reason: 'the unit “{unit}” is not known.',
    remedy: 'Use a unit such as {example}; units are multiplied with · and divided with /.',
  },
  'quantity.wrong-dimension': {
    reason: '{text} is a {found}, but a {expected} is wanted.',
    remedy: 'Give it in {example} or another unit of the same kind.',
  },
  'quantity.missing-unit': {
    reason: '“{text}” has no unit.',
    remedy: 'Add one, for example {example}.',
  },
  'quantity.decimal-comma': {
    reason: '“{text}” has a decimal comma, which could also separate thousands.',
    remedy: 'Write a point: {example}.',
  },
  'quantity.out-of-range': {
    reason: '{name} is {value}, outside {range}.',
    remedy: 'Check the number and its unit.',
  },
  'quantity.bad-uncertainty': {
    reason: 'the uncertainty “{text}” cannot be read.',
    remedy:
      'Write it as ± with a unit, for example {example}, or in brackets on the last digits, for example 73.2(4) g.',
  },
  // calculations
  'calculation.out-of-domain': {
    reason: '{name} is {value}, but {requirement}.',
    remedy: 'Check that figure and the ones it is made from.',
  },
  'calculation.missing': {
    reason: '{name} is missing.',
    remedy: 'Enter it on the page “{page}”.',
  },
  'calculation.unknown': {
    reason: 'there is no calculation “{id}”.',
    remedy: 'List them with: calc list',
  },
  // records
  'record.invalid': { reason: '{detail}.', remedy: 'Correct the value; nothing was stored.' },
  'record.unknown': {
    reason: 'there is no {kind} “{id}”.',
    remedy: 'It may belong to another notebook; check the name.',
  },
  'record.exists': { reason: 'a {kind} “{id}” exists already.', remedy: 'Choose another name.' },
  'record.issued': {
    reason: 'revision {letter} is issued and does not change.',
    remedy: 'Make a new revision from it and change that one.',
  },
} as const satisfies Record<string, { reason: string; remedy: string }>;

export type ProblemCode = keyof typeof catalogue;
