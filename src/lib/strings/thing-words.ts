import { later } from './table.ts';

/** What is pointed out on the block, as it is chosen and as it is written beside its mark: short, since it stands on the paper. */
export const THINGS: Readonly<Record<string, string>> = {
  'bust-point': 'the bust point',
  'dart-upper': 'the upper dart leg',
  'dart-lower': 'the lower dart leg',
  'centre-front': 'centre front',
  'neck-point': 'the neck point',
  'sewn-point': 'the sewn point',
  'waist-sewn-point': 'the sewn point',
  'waist-dart-centre': 'the inner dart leg',
  'waist-dart-side': 'the outer dart leg',
  neckline: 'the neckline',
  shoulder: 'the shoulder seam',
  armhole: 'the armhole',
  side: 'the side seam',
  waist: 'the waist',
  'shoulder-point': 'the shoulder point',
  underarm: 'the underarm',
  'side-waist': 'the waist corner at the side',
  'neck-centre': 'the neckline at centre front',
  'waist-centre': 'the waist at centre front',
};

later.thing = (what) => THINGS[what];
