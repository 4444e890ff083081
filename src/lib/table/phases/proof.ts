import '../../machines/tools/proof.ts';
import '../../strings/tool-words.ts';
import './drawn/proof.ts';
