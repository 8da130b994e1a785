/**
 * Says at the end of a run how long each part of it took, and which test files took longest: what to look at when the run has
 * become slow. Nothing depends on these times. The steps before the tests are timed by check.mjs, which hands their line in.
 */
import type { Reporter, TestModule } from 'vitest/node';

/** As many files as fit beside the closing line on a screen. */
const SLOWEST = 10;

const seconds = (milliseconds: number): string => `${(milliseconds / 1000).toFixed(1)} s`;

export default class HowLong implements Reporter {
  private readonly began = performance.now();
  /** Files of a project from the first that began to the last that ended, ms. */
  private readonly parts = new Map<string, { from: number; to: number }>();

  onTestModuleQueued({ project }: TestModule): void {
    const now = performance.now();
    if (!this.parts.has(project.name)) this.parts.set(project.name, { from: now, to: now });
  }

  onTestModuleEnd({ project }: TestModule): void {
    const part = this.parts.get(project.name);
    if (part) part.to = performance.now();
  }

  onTestRunEnd(modules: readonly TestModule[]): void {
    const parts = [...this.parts].map(([name, { from, to }]) => `${name} tests ${seconds(to - from)}`);
    const firstBegan = Math.min(...[...this.parts.values()].map(({ from }) => from));
    // Vitest itself, and the build that the browser tests open.
    if (parts.length > 0) parts.unshift(`to the first test ${seconds(firstBegan - this.began)}`);
    const before = process.env.BORROW_STEPS_BEFORE;
    console.log(`\nHow long it took: ${[...(before ? [before] : []), ...parts].join(', ')}.`);
    const files = modules
      .map((module) => {
        const { collectDuration, setupDuration, duration } = module.diagnostic();
        return { name: module.relativeModuleId, took: collectDuration + setupDuration + duration };
      })
      .sort((a, b) => b.took - a.took);
    console.log('The slowest files:');
    for (const { name, took } of files.slice(0, SLOWEST))
      console.log(`${seconds(took).padStart(10)}  ${name}`);
  }
}
