import '../../machines/tools/dart.ts';
