import '../../machines/tools/marks.ts';
import '../../strings/tool-words.ts';
