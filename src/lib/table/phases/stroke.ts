import '../../machines/tools/stroke.ts';
import '../../strings/tool-words.ts';
