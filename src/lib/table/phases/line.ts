import '../../machines/tools/line.ts';
import '../../strings/early-words.ts';
