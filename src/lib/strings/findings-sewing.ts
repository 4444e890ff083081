import type { Entries } from './finding-entry.ts';

/** Findings about making pieces ready to be sewn: allowances, labels, grain, and seams that are walked. */
export const SEWING_FINDINGS: Entries = {
  'allowances/pieces': 'The seams have to be treated before the allowances.',
  'allowances/before-truing': 'The {piece} has allowances, but its seam is not treated yet.',
  'allowances/width': {
    right: 'Allowance of the {piece}, {group}',
    missing: 'No allowance yet on the {piece}, {group}.',
  },
  'allowances/partners': 'Difference between the allowances of partner edges, {kind}',
  'allowances/corner': {
    right: 'The corner from {before} to {after} on the {piece} will lie flush.',
    wrong: 'The corner from {before} to {after} on the {piece} will not lie flush.',
    missing: 'The corner from {before} to {after} on the {piece} has no form yet.',
  },
  'allowances/notches': {
    right: 'The notches of the {piece} reach the cut line.',
    missing: 'The notches of the {piece} are not carried out to the cut line yet.',
  },

  'labels/pieces': 'There are no separate pieces to label yet.',
  'labels/label': 'The {piece} has no label yet.',
  'labels/name': {
    right: 'The {piece} is called “{name}”.',
    wrong: 'The {piece} needs a name of its own; “{name}” does not tell it from the others.',
  },
  'labels/cut': 'Number to cut of the {piece}',
  'labels/right-side-up': {
    right: 'The {piece} says right side up.',
    wrong: 'The {piece} is not symmetric, so its label has to say right side up.',
  },
  'labels/on-fold': {
    right: 'The {piece} says on the fold.',
    wrong:
      'The label of the {piece} and its centre edge have to agree: on the fold without an allowance, sewn with one.',
  },
  'grain/drawn': 'The {piece} has no grainline yet.',
  'grain/on-piece': {
    wrong: 'The grainline of the {piece} lies beside it; by it the piece is laid on the cloth.',
  },
  'grain/void':
    'Every part of the {piece} was turned, so the old grain is void; the new grainline is yours to choose.',
  'grain/direction': 'Grainline of the {piece}, off the centre front of the part that kept its grain',

  'walked/done': 'The {seam} is not walked yet.',
  'walked/along': {
    right: 'The {seam} was walked on the seam line.',
    wrong: 'The {seam} was walked on the cut line; walk seam line on seam line.',
  },
  'walked/says': {
    right: 'You say of the {seam} that {says}, and so it is.',
    wrong: 'You say of the {seam} that {says}; the walk shows something else.',
  },
  'walked/difference': 'Largest difference along the {seam}, beyond what is eased (from {from} to {to})',
};
