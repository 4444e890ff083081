import '../../machines/tools/cut.ts';
import '../../strings/tool-words.ts';
import { guides } from '../guides.ts';
import { late } from '../late.ts';
import './drawn/cut.ts';

late.guides = guides;
