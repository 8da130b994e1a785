/** The skid by the command line: the flag, the field of a request, and what is refused. */
import { describe, expect, it } from 'vitest';
import { run } from '../../../src/cli/run.ts';

const level = {
  surface: { kind: 'plane', slope: 0, downhillDeg: 0 },
  greenSpeedFt: 10,
  ballM: [0, 0],
  holeM: [3.048, 0],
  paceM: 0.3,
};
const speedOf = (request: object): number =>
  (JSON.parse(run(['read', '--json'], JSON.stringify(request)).stdout) as { speed: number }).speed;

describe('the skid by the command line', () => {
  it('is counted when a request says so: on the level the launch speed follows from the two stretches', () => {
    // 12/49 v^2/(mu g) sliding, then 25/49 v^2/(2 a_f) rolling: MODEL.md section 1 (derived). JSON gives all digits.
    const friction = 1.83 ** 2 / (2 * 3.048);
    const way = 3.048 + 0.3;
    expect(speedOf({ ...level, skid: true })).toBeCloseTo(
      Math.sqrt(way / (12 / (49 * 0.4 * 9.81) + 25 / (98 * friction))),
      9,
    );
    expect(speedOf(level)).toBeCloseTo(Math.sqrt(2 * friction * way), 9);
    expect(speedOf({ ...level, skid: false })).toBe(speedOf(level));
  });

  it('is counted by --skid on, and not by --skid off', () => {
    const ask = (...more: string[]): string =>
      run(['read', '--length', '10ft', '--slope', '2%', '--ball', '3:00', '--green-speed', '10', ...more], '')
        .stdout;
    expect(ask('--skid', 'off')).toBe(ask());
    expect(ask('--skid', 'on')).not.toBe(ask());
  });

  it('is refused in one line when it is neither', () => {
    const flag = run(
      ['read', '--length', '10ft', '--slope', '0%', '--green-speed', '10', '--skid', 'wet'],
      '',
    );
    expect(flag.exitCode).toBe(2);
    expect(flag.stderr).toMatch(/^[^\n]*--skid: got "wet", expected off or on\. [^\n]+\n$/);
    const field = run(['read', '--json'], JSON.stringify({ ...level, skid: 'on' }));
    expect(field.exitCode).toBe(2);
    expect(field.stderr).toMatch(/^[^\n]*skid: got "on", expected true or false\. [^\n]+\n$/);
  });
});
