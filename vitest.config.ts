/**
 * How tests run. One project, in Node. The `browser` project (tests/browser over a served production build,
 * tests/support/serveBuild.ts) comes back when the app compiles against the engine.
 */
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    reporters: ['default', './tests/support/closingLine.ts'],
    // Two cores: more workers than that only make every test slower, and nearer to its limit.
    maxWorkers: 2,
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          environment: 'node',
          // Only what is connected to the engine: DEVELOPERS.md, "What is not there yet".
          include: [
            'tests/sim/purity.test.ts',
            'tests/sim/random.test.ts',
            'tests/sim/roll/**/*.test.ts',
            'tests/sim/surface/**/*.test.ts',
            'tests/reference/*.test.ts',
          ],
          exclude: ['tests/browser/**', 'tests/bench/**'],
          testTimeout: 30_000,
        },
      },
    ],
  },
});
