import '../../machines/tools/block.ts';
import '../../strings/thing-words.ts';
