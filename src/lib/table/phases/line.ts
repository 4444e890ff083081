import '../../machines/tools/line.ts';
import '../../strings/tool-words.ts';
