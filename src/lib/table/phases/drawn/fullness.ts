import { fulled } from '../../fulled.ts';
import { late } from '../../late.ts';

late.fulled = fulled;
