import '../../machines/tools/sewn.ts';
import '../../strings/tool-words.ts';
