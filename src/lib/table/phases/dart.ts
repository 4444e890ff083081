import '../../machines/tools/dart.ts';
import { guides } from '../guides.ts';
import { late } from '../late.ts';

late.guides = guides;
