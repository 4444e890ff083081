/** How many tests of one runner came out how. */
export interface Count {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

/** Reads the JSON report of the unit tests; a file that could not even be loaded counts as one failure. */
export function unitCount(report: unknown): Count {
  const files = list(report, 'testResults');
  const empty = files.filter(
    (file) => list(file, 'assertionResults').length === 0 && field(file, 'status') === 'failed',
  );
  return {
    passed: number(report, 'numPassedTests'),
    failed: number(report, 'numFailedTests') + empty.length,
    skipped: number(report, 'numPendingTests') + number(report, 'numTodoTests'),
  };
}

/** Reads the JSON report of the browser tests; one that passed only when tried again counts as passed. */
export function browserCount(report: unknown): Count {
  const stats = field(report, 'stats');
  return {
    passed: number(stats, 'expected') + number(stats, 'flaky'),
    failed: number(stats, 'unexpected'),
    skipped: number(stats, 'skipped'),
  };
}

function field(value: unknown, name: string): unknown {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[name] : undefined;
}

function number(value: unknown, name: string): number {
  const found = field(value, name);
  return typeof found === 'number' ? found : 0;
}

function list(value: unknown, name: string): readonly unknown[] {
  const found = field(value, name);
  return Array.isArray(found) ? found : [];
}
