import { fulled, seenThrough } from '../../fulled.ts';
import { late } from '../../late.ts';
import './cut.ts';

late.fulled = fulled;
late.through = seenThrough;
