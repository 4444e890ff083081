import '../../machines/tools/stroke.ts';
import '../../strings/early-words.ts';
