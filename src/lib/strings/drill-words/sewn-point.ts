import { always } from './kind-words.ts';

/** The hints where one dart or several are backed off. */
export const SEWN_POINT_HINTS = always(
  'Where will the stitching end, and how far is that from where the dart aims?',
  'The length is that of the paper which the exercise names. At half scale it is half of what it is in full size.',
  'Take the tool that backs a dart off, choose the dart, and type the length.',
);
