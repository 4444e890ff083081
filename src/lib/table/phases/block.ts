import '../../machines/tools/block.ts';
import '../../strings/thing-words.ts';
import { late } from '../late.ts';
import { nameless } from '../nameless.ts';
import { pointedLabels } from '../pointed.ts';

late.pointedLabels = pointedLabels;
late.nameless = nameless;
