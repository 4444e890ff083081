import { late } from '../../late.ts';
import { overlayLabels } from '../../overlay-labels.ts';
import { overlayOf } from '../../overlay.ts';

late.overlayOf = overlayOf;
late.overlayLabels = overlayLabels;
