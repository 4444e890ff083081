import { cutLine } from '../../../pattern/allowance.ts';
import { late } from '../../late.ts';
import { notchNames } from '../../notch-names.ts';

late.cutLine = cutLine;
late.notchNames = notchNames;
