/**
 * Ends the output of a test run with one plain line, `N passed, N failed, N skipped`. A file that fails before it has
 * any test, or an error outside all tests, counts as one failure each: a broken run never reads as a clean one.
 */
import type { Reporter, TestModule } from 'vitest/node';

export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandledErrors: readonly unknown[]): void {
    let passed = 0;
    let failed = unhandledErrors.length;
    let skipped = 0;
    for (const module of modules) {
      if (module.errors().length > 0) failed += 1;
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (state === 'passed') passed += 1;
        else if (state === 'failed') failed += 1;
        else skipped += 1;
      }
    }
    console.log(`\n${passed} passed, ${failed} failed, ${skipped} skipped`);
  }
}
