import type { Entries, Entry } from './finding-entry.ts';

const found = (what: string): Entry => ({
  right: `Distance of your mark from the ${what}`,
  missing: `The ${what} is not pointed out yet.`,
});
const read = (what: string): Entry => ({ right: `Your ${what}`, missing: `The ${what} is not read yet.` });

/** Findings about what is pointed out and read: on the block, and on paper. */
export const READ_FINDINGS: Entries = {
  'landmarks-found/bust-point': found('bust point'),
  'landmarks-found/dart-upper': found('upper dart leg'),
  'landmarks-found/dart-lower': found('lower dart leg'),
  'landmarks-found/centre-front': found('centre front'),
  'landmarks-found/neck-point': found('neck point'),
  'landmarks-found/sewn-point': found('sewn point of the side dart'),
  'landmarks-found/waist-sewn-point': found('sewn point of the waist dart'),
  'landmarks-found/waist-dart-centre': found('inner leg of the waist dart'),
  'landmarks-found/waist-dart-side': found('outer leg of the waist dart'),
  'landmarks-found/neckline': found('neckline'),
  'landmarks-found/shoulder': found('shoulder seam'),
  'landmarks-found/armhole': found('armhole'),
  'landmarks-found/side': found('side seam'),
  'landmarks-found/waist': found('waist'),
  'landmarks-found/shoulder-point': found('shoulder point'),
  'landmarks-found/underarm': found('underarm'),
  'landmarks-found/side-waist': found('waist corner at the side'),
  'landmarks-found/neck-centre': found('neckline at centre front'),
  'landmarks-found/waist-centre': found('waist at centre front'),
  'readings/dart-angle': read('angle of the dart at the bust point'),
  'readings/leg-length': read('length of a dart leg, from the bust point to the {edge}'),
  'readings/intake': read('intake at the {edge}'),
  'paper/dart-angle': {
    right: 'Angle of {open} on your paper',
    missing: 'The table has no such dart to compare the angle with.',
  },
  'paper/intake': {
    right: 'Intake of {open} on your paper',
    missing: 'The table has no such dart to compare the intake with.',
  },
  'paper/leg-length': {
    right: 'Leg of {open} on your paper, from the bust point',
    missing: 'The table has no such dart to compare the leg with.',
  },
  'paper/agrees': {
    note: 'Your three measures of {open} agree with each other, so the dart itself lies elsewhere or is another; the intake beside what your leg and angle make it, 2 × leg × sin(angle / 2)',
    wrong:
      'Your three measures of {open} do not agree with each other, so one of them was misread; the intake beside what your leg and angle make it, 2 × leg × sin(angle / 2)',
  },
  'paper/connector-length': {
    right: 'Connector of {open} on your paper, from the bust point to the style line',
    missing: 'The table has no such connector to compare with.',
  },
  'paper/connector-angle': {
    right: 'Angle of the connector of {open} to the style line, on your paper',
    missing: 'The table has no such connector to compare the angle with.',
  },
  'paper/opening': {
    right: 'Opening left by {open} in the seam of the {piece}, on your paper',
    missing: 'The table has no such opening to compare with.',
  },
  'paper/seam-length': {
    right: 'Length of the {group} on your paper, {piece}',
    missing: 'The table has no such seam to compare with.',
  },
  'paper/allowance-width': {
    right: 'Width of the allowance on your paper, {group} of the {piece}',
    missing: 'The table has no such allowance to compare with.',
  },
};
