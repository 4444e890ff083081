import { fulled, seenThrough } from '../../fulled.ts';
import { late } from '../../late.ts';

late.fulled = fulled;
late.through = seenThrough;
