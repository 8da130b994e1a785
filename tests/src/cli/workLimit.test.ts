/** The limit of work of one request: a legal but extreme one is given up with a sentence, an ordinary one is not. */
import { describe, expect, it } from 'vitest';
import { feetToMetres, type Putt, planeSurface, presetOf } from '../../../sim/index.ts';
import { TooMuchWork, tableWithin } from '../../../src/cli/workLimit.ts';

const PUTT: Putt = {
  surface: planeSurface({ slope: 0.02, downhill: 0 }),
  greenSpeed: feetToMetres(10),
  ball: { x: 3, y: 0 },
  hole: { x: 0, y: 0 },
  capture: 'simple',
};
const player = presetOf('tour')?.player;
if (player === undefined) throw new Error('no preset');

describe('the limit of work', () => {
  it('gives up in one line that says what was got, what was expected and how to mend it', () => {
    expect(() => tableWithin(PUTT, player, 0)).toThrow(TooMuchWork);
    expect(() => tableWithin(PUTT, player, 0)).toThrow(
      /^got a request that takes more than 0 s, expected [^\n]+\. Use [^\n]+$/,
    );
  });

  it('lets an ordinary request through', () => {
    expect(tableWithin(PUTT, player).expected.length).toBeGreaterThan(0);
  });
});
