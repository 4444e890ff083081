import '../../machines/tools/finish.ts';
import '../../strings/tool-words.ts';
import './drawn/finish.ts';
