import type { Finding } from '../grading/types.ts';
import type { HintLadder } from '../lessons/types.ts';

/** The ladder for what is actually off: the first that names an open finding's code, else the general one. */
export function ladderFor(
  hints: readonly HintLadder[],
  findings: readonly Finding[],
): HintLadder | undefined {
  const open = new Set(
    findings.filter((finding) => finding.state === 'wrong' || finding.state === 'missing').map((f) => f.code),
  );
  return (
    hints.find((ladder) => ladder.codes.some((code) => open.has(code))) ??
    hints.find((ladder) => ladder.codes.length === 0)
  );
}
