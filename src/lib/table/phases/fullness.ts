import '../../machines/tools/fullness.ts';
import '../../strings/tool-words.ts';
import './drawn/fullness.ts';
