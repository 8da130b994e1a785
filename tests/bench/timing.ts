/** How the bench times things and shows them. Leaves out: what is timed (index.ts, rolls.ts). */
import { Bench } from 'tinybench';
import type { Player, Putt } from '../../sim/index.ts';

/** A putt that several rows are about. */
export interface Subject {
  readonly name: string;
  readonly putt: Putt;
  readonly player: Player;
  /** Times asked for, the Monte Carlo over the comparison. */
  readonly target: string;
}

export interface RatioRow {
  readonly what: string;
  readonly engine: string;
  readonly against: string;
  readonly plain: string;
  readonly ratio: string;
  readonly target: string;
}

/** Median time of one call, ms. */
export async function timeOf(task: () => unknown, budget: number): Promise<number> {
  const bench = new Bench({ time: budget, iterations: 3, warmupTime: budget / 5, warmupIterations: 1 });
  bench.add('task', task);
  await bench.run();
  const { result } = bench.tasks[0];
  if (!('latency' in result)) throw new Error(`the benchmark did not complete: ${result.state}`);
  return result.latency.p50;
}

export const milliseconds = (time: number): string =>
  time < 1 ? `${(1000 * time).toFixed(time < 0.01 ? 2 : 1)} us` : `${time.toFixed(time < 100 ? 1 : 0)} ms`;
export const times = (ratio: number): string =>
  ratio < 10 ? ratio.toFixed(1) : Math.round(ratio).toLocaleString('en');
