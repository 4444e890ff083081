import { describe, expect, test } from 'vitest';
import { browserCount, unitCount } from './counts.ts';

describe('counting what the runners report', () => {
  test('a report that is missing or of another form counts nothing, so that the caller sees that no test ran', () => {
    for (const report of [undefined, null, 'text', [], {}]) {
      expect(unitCount(report)).toEqual({ passed: 0, failed: 0, skipped: 0 });
      expect(browserCount(report)).toEqual({ passed: 0, failed: 0, skipped: 0 });
    }
  });

  test('a file that could not be loaded is a failure although it holds no test', () => {
    const report = {
      numPassedTests: 4,
      numFailedTests: 1,
      numPendingTests: 2,
      testResults: [
        { status: 'failed', assertionResults: [] },
        { status: 'failed', assertionResults: [{ status: 'failed' }] },
      ],
    };
    expect(unitCount(report)).toEqual({ passed: 4, failed: 2, skipped: 2 });
  });

  test('browser tests are counted by how they ended', () => {
    const report = { stats: { expected: 5, unexpected: 2, flaky: 1, skipped: 3 } };
    expect(browserCount(report)).toEqual({ passed: 6, failed: 2, skipped: 3 });
  });
});
