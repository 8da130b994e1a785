/**
 * How tests run. Three projects: `unit` and `engine` run in Node; `browser` also runs in Node, but drives a real Chromium over a
 * production build that its global set-up makes and serves once.
 * Left out: @vitest/browser. Tests inside the page would test a development build; these test what a user gets.
 */
import { defineConfig } from 'vitest/config';

/** The engine is pure (tests/sim/purity.test.ts): files that test it alone share its modules, which saves loading them a hundred times. */
const ENGINE = [
  'tests/*.test.ts',
  'tests/sim/**/*.test.ts',
  'tests/laws/**/*.test.ts',
  'tests/reference/**/*.test.ts',
];
/** A file that puts something else in the place of a module has modules of its own. */
const MOCKS = ['tests/sim/costs/costs.test.ts'];
const IN_NODE = {
  environment: 'node',
  // Against hanging only: no test asserts a time.
  testTimeout: 300_000,
  hookTimeout: 300_000,
} as const;

export default defineConfig({
  test: {
    reporters: ['default', './tests/support/howLong.ts', './tests/support/closingLine.ts'],
    // Two cores: more workers than that only make every test slower, and nearer to its limit.
    maxWorkers: 2,
    projects: [
      {
        extends: true,
        test: {
          ...IN_NODE,
          name: 'engine',
          include: ENGINE,
          exclude: MOCKS,
          isolate: false,
        },
      },
      {
        extends: true,
        test: {
          ...IN_NODE,
          name: 'unit',
          include: ['tests/src/**/*.test.ts', 'tests/src/**/*.test.tsx', ...MOCKS],
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          environment: 'node',
          include: ['tests/browser/**/*.e2e.ts'],
          globalSetup: ['./tests/support/serveBuild.ts'],
          // After the unit tests: what a page does is told apart from what they do to the machine, and so are the times.
          sequence: { groupOrder: 1 },
          // Against hanging only, as the waits below and in support/browser.ts: late is not wrong on a busy machine.
          testTimeout: 300_000,
          hookTimeout: 300_000,
          expect: { poll: { timeout: 60_000 } },
        },
      },
    ],
  },
});
