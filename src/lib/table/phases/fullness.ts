import '../../machines/tools/fullness.ts';
import '../../strings/tool-words.ts';
import { fulled } from '../fulled.ts';
import { late } from '../late.ts';

late.fulled = fulled;
