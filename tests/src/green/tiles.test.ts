/** Playing the whole green in tiles: order, sharing, stopping, going on. Players follow a formula (shells.ts), not the engine. */
import { describe, expect, it } from 'vitest';
import { emptyGreenMap, nodePoint, PLACE_STATUS, placesToPlay, seededRandom } from '../../../sim/index.ts';
import { mirrorOf } from '../../../src/screens/green/maps.ts';
import {
  isDone,
  pictureOf,
  type Refinement,
  refine,
  TILE,
  tilesOf,
} from '../../../src/screens/green/tiles.ts';
import { flatTable, formulaPlayer, planePutt, puttsAt } from './shells.ts';

const putt = planePutt();
const table = flatTable();
const start = (): Refinement => ({ map: emptyGreenMap(putt, { spacing: 0.5, reach: 4 }), step: 0 });
const always = { wanted: () => true, onProgress: () => undefined };
const alone = async (from = start()): Promise<Refinement> =>
  refine({ from, table, players: [formulaPlayer(from).play], ...always });

describe('tiles', () => {
  it('hold every place once, nearest the hole first, and few enough to wait for', () => {
    const { map } = start();
    const places = placesToPlay(map, 0);
    const tiles = tilesOf(map, places, putt.hole);
    const all = tiles.flatMap((tile) => [...tile]);
    expect([...all].sort((one, two) => one - two)).toEqual([...places]);
    for (const tile of tiles) expect(tile.length).toBeLessThanOrEqual(TILE);
    const far = all.map((node) => Math.hypot(nodePoint(map, node).x, nodePoint(map, node).y));
    for (let at = 1; at < far.length; at++) expect(far[at]).toBeGreaterThanOrEqual(far[at - 1]);
  });
});

describe('refining', () => {
  it('ends with what was played at the places played, whoever played them and in whatever order they answered', async () => {
    const one = await alone();
    expect(isDone(one)).toBe(true);
    const random = seededRandom('answers');
    const from = start();
    const players = [1, 2, 3].map(() => formulaPlayer(from, () => 1 + Math.floor(random() * 9)));
    const three = await refine({ from, table, players: players.map(({ play }) => play), ...always });
    expect(three).toEqual(one);
    for (const { asked } of players) expect(asked.length).toBeGreaterThan(0);
    const { map } = three;
    const played = [...map.status.keys()].filter((node) => map.status[node] === PLACE_STATUS.played);
    expect(played.length).toBeGreaterThan(80);
    for (const node of played) {
      const { x, y } = nodePoint(map, node);
      expect(map.expected[node]).toBe(puttsAt(x, y));
    }
  });

  it('plays no place twice', async () => {
    const from = start();
    const players = [formulaPlayer(from), formulaPlayer(from, () => 3)];
    await refine({ from, table, players: players.map(({ play }) => play), ...always });
    const all = players.flatMap(({ asked }) => asked.flatMap((tile) => [...tile]));
    expect(new Set(all).size).toBe(all.length);
  });

  it.each([1, 3, 7])(
    'stopped after %i tiles and gone on with, plays only what was left and ends the same',
    async (tiles) => {
      const whole = await alone();
      const from = start();
      const before = formulaPlayer(from);
      let entered = 0;
      const half = await refine({
        from,
        table,
        players: [before.play],
        wanted: () => entered < tiles,
        onProgress: () => {
          entered += 1;
        },
      });
      expect(isDone(half)).toBe(false);
      const after = formulaPlayer(from);
      expect(await refine({ from: half, table, players: [after.play], ...always })).toEqual(whole);
      const first = new Set(before.asked.flatMap((tile) => [...tile]));
      for (const tile of after.asked) for (const node of tile) expect(first.has(node)).toBe(false);
    },
  );

  it('gives up without an answer when a player is called off', async () => {
    const from = start();
    const end = await refine({ from, table, players: [async () => undefined], ...always });
    expect(end.step).toBe(0);
    expect(end.map).toEqual(from.map);
  });

  it('tells a share that never falls and ends at one', async () => {
    const shares: number[] = [];
    const from = start();
    await refine({
      from,
      table,
      players: [formulaPlayer(from).play],
      wanted: () => true,
      onProgress: (_, share) => shares.push(share),
    });
    for (let at = 1; at < shares.length; at++) expect(shares[at]).toBeGreaterThanOrEqual(shares[at - 1]);
    expect(shares[0]).toBeGreaterThan(0);
    expect(shares.at(-1)).toBeLessThanOrEqual(1);
    expect(shares.at(-1)).toBeGreaterThan(0.8);
  });

  it('plays one half of what is its own mirror image and has the same map', async () => {
    const whole = await alone();
    const from = start();
    const one = formulaPlayer(from);
    const folded = await refine({
      from,
      table,
      players: [one.play],
      mirror: mirrorOf(putt, from.map),
      ...always,
    });
    expect(folded).toEqual(whole);
    const asked = one.asked.reduce((sum, tile) => sum + tile.length, 0);
    const played = whole.map.status.filter((status) => status === PLACE_STATUS.played).length;
    expect(asked).toBeLessThan(0.6 * played);
  });
});

describe('a picture', () => {
  it('is there before anything is played: what the table tells, with one putt in the hole and nothing off the map', () => {
    const picture = pictureOf(start().map, table);
    const statuses = new Set(picture.status);
    expect(statuses).toEqual(new Set([PLACE_STATUS.interpolated, PLACE_STATUS.inHole]));
    for (let node = 0; node < picture.status.length; node++)
      if (picture.status[node] === PLACE_STATUS.interpolated)
        expect(picture.expected[node]).toBeCloseTo(1.5, 12);
  });

  it('keeps what is played and takes the table where nothing near is', async () => {
    const from = start();
    let entered = 0;
    const half = await refine({
      from,
      table,
      players: [formulaPlayer(from).play],
      wanted: () => entered < 1,
      onProgress: () => {
        entered += 1;
      },
    });
    const picture = pictureOf(half.map, table);
    for (let node = 0; node < picture.status.length; node++)
      if (half.map.status[node] === PLACE_STATUS.played) {
        const { x, y } = nodePoint(picture, node);
        expect(picture.expected[node]).toBe(puttsAt(x, y));
      }
    expect(picture.expected[0]).toBeCloseTo(1.5, 12);
  });
});
