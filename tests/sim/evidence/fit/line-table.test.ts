/** Lines by table against lines solved one by one. */
import { describe, expect, it } from 'vitest';
import { ballAt, greenOf } from '../../../../sim/benchmarks/putts.ts';
import { tableLine } from '../../../../sim/evidence/fit/line-table.ts';
import { seededRandom } from '../../../../sim/index.ts';
import { LineWalk } from '../../../../sim/read/line.ts';
import { steepestHold } from '../../../../sim/roll/plane.ts';
import { startOf } from '../../../../sim/roll/roll.ts';

describe('lines by table', () => {
  it('are those of the solver on any plane that is gentle enough to be seen', () => {
    const random = seededRandom('lines by table');
    const out = { energy: 0, sweep: 0 };
    let energyOff = 0;
    let startOff = 0;
    for (let i = 0; i < 400; i++) {
      const length = 0.4 * 40 ** random();
      const pace = 0.12 * 8 ** random();
      const greenSpeed = 2 + 1.6 * random();
      const slope = 0.85 * steepestHold(greenSpeed) * random();
      const turned = Math.PI * (2 * random() - 1);
      const putt = ballAt(greenOf(slope, greenSpeed, 'rim'), length, turned);
      const line = new LineWalk(putt).lineAt(pace);
      if (line === undefined) throw new Error('it has a line');
      // The ball straight below the hole putts uphill; turned to the right of that, the ground rises to the left.
      const [along, across] = [slope * Math.cos(turned), slope * Math.sin(turned)];
      tableLine({ length, pace, along, across, greenSpeed }, out);
      energyOff = Math.max(energyOff, Math.abs(out.energy / line.speed ** 2 - 1));
      startOff = Math.max(
        startOff,
        Math.abs(Math.abs(out.sweep / out.energy) - Math.abs(startOf(putt, line.heading))),
      );
    }
    // A thousandth of the energy and of a radian: a fiftieth of any player's errors.
    expect(energyOff).toBeLessThan(1e-3);
    expect(startOff).toBeLessThan(1e-3);
  });
});
