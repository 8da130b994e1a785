/** Small greens without an engine behind them: a table and players that follow one formula, so that maps can be compared. */
import {
  type NextPutts,
  nodePoint,
  PLACE_STATUS,
  type Player,
  PRESETS,
  type Putt,
  planeSurface,
} from '../../../sim/index.ts';
import type { MapQuestion } from '../../../src/screens/green/maps.ts';
import type { PlayTile, Refinement } from '../../../src/screens/green/tiles.ts';

export const [{ player }, { player: otherPlayer }] = PRESETS as unknown as readonly { player: Player }[];

export const planePutt = (hole = { x: 0, y: 0 }, slope = 0.02): Putt => ({
  surface: planeSurface({ slope, downhill: -Math.PI / 2 }),
  greenSpeed: 3.048,
  ball: { x: hole.x + 1, y: hole.y },
  hole,
  capture: 'simple',
});

export const planeQuestion = (hole?: { x: number; y: number }, slope?: number): MapQuestion => ({
  putt: planePutt(hole, slope),
  player,
});

const RINGS = 97;
const SPOKES = 96;
const FARTHEST = 12;

/** A table that tells one and a half putts everywhere. */
export const flatTable = (hole = { x: 0, y: 0 }): NextPutts => {
  const all = (value: number) => new Float64Array(RINGS * SPOKES).fill(value);
  return {
    hole,
    zero: -Math.PI / 2,
    farthest: FARTHEST,
    rings: RINGS,
    spokes: SPOKES,
    missed: all(0.5),
    expected: all(1.5),
    two: all(0.5),
    three: all(0),
    pace: all(0.4),
  };
};

/** Expected putts of the formula: more with distance, more above the hole, the same on the left and on the right. */
export const puttsAt = (x: number, y: number): number =>
  1 + 0.08 * Math.min(Math.hypot(x, y), 10) + 0.02 * Math.max(0, y);

/** A player by the formula; remembers what it was asked, and answers after as many turns as `turns` says. */
export const formulaPlayer = (
  { map }: Refinement,
  turns: () => number = () => 1,
): { readonly play: PlayTile; readonly asked: Int32Array[] } => {
  const asked: Int32Array[] = [];
  const play: PlayTile = async (nodes) => {
    asked.push(nodes);
    for (let turn = turns(); turn > 0; turn--) await Promise.resolve();
    const expected = Float64Array.from(nodes, (node) => {
      const { x, y } = nodePoint(map, node);
      return puttsAt(x, y);
    });
    return {
      nodes,
      expected,
      one: expected.map((putts) => Math.max(0, 2 - putts)),
      threeOrMore: expected.map((putts) => Math.max(0, putts - 2)),
      pace: new Float64Array(nodes.length).fill(0.4),
      status: new Uint8Array(nodes.length).fill(PLACE_STATUS.played),
    };
  };
  return { play, asked };
};
