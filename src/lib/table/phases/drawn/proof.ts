import { late } from '../../late.ts';
import { overlayOf } from '../../overlay.ts';

late.overlayOf = overlayOf;
late.overlayLabels = overlayLabels;
