import '../../machines/tools/finish.ts';
import '../../strings/tool-words.ts';
import { cutLine } from '../../pattern/allowance.ts';
import { eased } from '../eased.ts';
import { late } from '../late.ts';
import { notchNames } from '../notch-names.ts';

late.cutLine = cutLine;
late.eased = eased;
late.notchNames = notchNames;
