import '../../machines/tools/treat.ts';
import '../../strings/tool-words.ts';
import './drawn/treat.ts';
