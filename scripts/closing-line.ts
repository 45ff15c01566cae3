// Ends a test run with one line that a person and a script can both read: "412 passed, 0 failed, 3 skipped".
import type { Reporter, SerializedError, TestModule } from 'vitest/node';

interface Tally {
  readonly passedCount: number;
  readonly failedCount: number;
  readonly skippedCount: number;
}

/** A file that breaks before its first test, and an error outside any test, count as failures: neither may look like a pass. */
export function tally(modules: readonly TestModule[], errors: readonly SerializedError[]): Tally {
  let passedCount = 0;
  let failedCount = errors.length;
  let skippedCount = 0;
  for (const module of modules) {
    let failedHere = 0;
    for (const test of module.children.allTests()) {
      const { state } = test.result();
      if (state === 'passed') passedCount += 1;
      else if (state === 'failed') failedHere += 1;
      else skippedCount += 1; // skipped, or never reached because the run was stopped
    }
    if (failedHere === 0 && module.state() === 'failed') failedHere = 1;
    failedCount += failedHere;
  }
  return { passedCount, failedCount, skippedCount };
}

export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], errors: readonly SerializedError[]): void {
    const { passedCount, failedCount, skippedCount } = tally(modules, errors);
    // The summary above is written through the same stream, so this stays the last line.
    process.stdout.write(`\n${passedCount} passed, ${failedCount} failed, ${skippedCount} skipped\n`);
  }
}
