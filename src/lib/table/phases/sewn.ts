import '../../machines/tools/sewn.ts';
import '../../strings/early-words.ts';
