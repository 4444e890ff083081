import '../../machines/tools/caps.ts';
import '../../strings/tool-words.ts';
