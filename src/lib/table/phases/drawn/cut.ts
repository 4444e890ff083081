import { fromTheRight } from '../../beside.ts';
import { late } from '../../late.ts';

late.fromTheRight = fromTheRight;
