import '../../machines/tools/fullness.ts';
