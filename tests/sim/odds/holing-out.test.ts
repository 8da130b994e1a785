/**
 * Holing out by the best pace: the two solvers on the program of a plane and of a green, whole holes played out by a
 * plain Monte Carlo under the policy found (its own rolls, lines and capture: tests/bench), fixed paces, and laws.
 */
import { describe, expect, it } from 'vitest';
import {
  comparePaces,
  holingOutAt,
  type NextPutts,
  type Player,
  type Point,
  type Putt,
  prepareNextPutts,
} from '../../../sim/index.ts';
import { evaluatePolicy, policyIteration, valueIteration } from '../../../sim/maths/dynamic-program.ts';
import { type HoleOut, holeOut } from '../../../sim/odds/holing-out.ts';
import { outcomesOf } from '../../../sim/odds/next-putts.ts';
import { tableOf as tableFrom } from '../../../sim/odds/polar-table.ts';
import { normals, plainCapture, struckOf } from '../../bench/oracle.ts';
import { CASES, playerOf, puttOf } from '../../bench/oracle-cases.ts';
import { plainLine } from '../../bench/oracle-line.ts';
import { LONG_STEP, newPlainRoll, rollPlain, settingOf } from '../../bench/oracle-roll.ts';
import { sightOf } from '../../bench/oracle-seen.ts';
import { sized } from '../../support/size.ts';

const caseNamed = (name: string): { putt: Putt; player: Player } => {
  const found = CASES.find((one) => one.name === name);
  if (found === undefined) throw new Error(`no case named ${name}`);
  return { putt: puttOf(found), player: playerOf(found.player) };
};
const PLANE = caseNamed('pin-high 3 m on 2%, die');
const STEEP = caseNamed('soft 3 m down 4%, beginner');
const BIASED = caseNamed('charged 6 m on 2.5%, biased');
const GREEN = caseNamed('4 m on a green');

/** Each program is made and solved once, and its table made of it as prepareNextPutts does (the last test holds the two together). */
const solved = new Map<typeof PLANE, { readonly program: HoleOut; readonly table: NextPutts }>();
function solvedOf(question: typeof PLANE): { readonly program: HoleOut; readonly table: NextPutts } {
  const known = solved.get(question);
  if (known !== undefined) return known;
  const program = holeOut(question.putt, question.player);
  const { policy } = policyIteration(program.decisions, program.sensible);
  const table = tableFrom(question.putt.hole, program.grid, outcomesOf(program, policy));
  solved.set(question, { program, table });
  return { program, table };
}
const tableOf = (question: typeof PLANE): NextPutts => solvedOf(question).table;

describe('the program of holing out', () => {
  it.each([
    ['a plane', PLANE],
    ['steep ground and a beginner', STEEP],
    ['a green', GREEN],
  ])(
    'is solved alike by policy and by value iteration, within the bound of the latter: %s',
    (_, question) => {
      const { decisions, sensible } = solvedOf(question).program;
      const exact = policyIteration(decisions, sensible);
      const near = valueIteration(decisions, 1e-6);
      expect(near.bound).toBeLessThanOrEqual(1e-6);
      for (let i = 0; i < exact.values.length; i++) {
        // Rounding of sums of a few hundred numbers below ten.
        expect(near.values[i]).toBeLessThanOrEqual(exact.values[i] + 1e-11);
        expect(near.values[i]).toBeGreaterThanOrEqual(exact.values[i] - near.bound - 1e-11);
      }
    },
  );
});

const away = (hole: Point, from: Point): { x: number; y: number } => ({
  x: from.x - hole.x,
  y: from.y - hole.y,
});

/** A player who allows for both his habits in full, as on every putt after the first. */
const allowing = (player: Player): Player => ({ ...player, readBias: 0, paceBias: 0 });

/** Putts taken from `from` by a plain player who looks up the pace in the table before every putt and sees the ground anew. */
function playHole(
  { putt, player }: typeof PLANE,
  from: Point,
  table: NextPutts,
  normal: () => number,
  setting: ReturnType<typeof settingOf>,
): number {
  const capture = plainCapture(putt.capture);
  const knowing = allowing(player);
  const out = newPlainRoll();
  let ball = from;
  for (let putts = 1; putts < 12; putts++) {
    const { x, y } = away(putt.hole, ball);
    const { pace } = holingOutAt(table, x, y);
    const line = plainLine(sightOf(setting, knowing, normal), ball, pace, 1e-4);
    if (line === undefined) throw new Error(`no plain line from ${x}, ${y} at ${pace}`);
    const { heading, speed } = struckOf(line, knowing, normal);
    rollPlain(setting, ball, heading, speed, out, capture);
    if (out.status === 'dropped') return putts;
    if (out.status === 'lost') throw new Error('a ball was lost');
    ball = { x: out.x, y: out.y };
  }
  throw new Error('a hole took twelve putts');
}

/** Tolerances below go by the standard error of so many. */
const HOLES = sized(700, 2000);

describe('whole holes played out under the policy found', () => {
  it.each([
    ['pin-high on 2%', PLANE, 2.5, 1.2],
    ['short, down across 4%, beginner', STEEP, 1, 1.9],
    ['6 m by a player who reads too little', BIASED, 4, 1.6],
    ['on a green', GREEN, 3, 4],
  ] as const)('take as many putts as the table says: %s', (name, question, distance, angle) => {
    const holes = HOLES;
    const { putt } = question;
    const table = tableOf(question);
    const from = {
      x: putt.hole.x + distance * Math.cos(table.zero + angle),
      y: putt.hole.y + distance * Math.sin(table.zero + angle),
    };
    const setting = settingOf(putt, LONG_STEP);
    const normal = normals(`holing out ${name}`);
    const counts = [0, 0, 0, 0];
    let sum = 0;
    let squares = 0;
    for (let i = 0; i < holes; i++) {
      const putts = playHole(question, from, table, normal, setting);
      counts[Math.min(putts, 4) - 1]++;
      sum += putts;
      squares += putts * putts;
    }
    const { x, y } = away(putt.hole, from);
    const told = holingOutAt(table, x, y);
    const mean = sum / holes;
    // Four standard errors.
    const error = Math.sqrt((squares / holes - mean * mean) / holes);
    expect(Math.abs(told.expectedPutts - mean)).toBeLessThan(4 * error);
    const { one, two, three, more } = told.chances;
    [one, two, three, more].forEach((chance, i) => {
      // Four standard errors of what is told, or by Laplace's rule of what was counted: a count of none has an error too, and so has a chance.
      const share = Math.max(chance, (counts[i] + 1) / (holes + 2));
      expect(Math.abs(chance - counts[i] / holes)).toBeLessThan(4 * Math.sqrt((share * (1 - share)) / holes));
    });
  });
});

const PACES = [0.03, 0.06, 0.1, 0.15, 0.2, 0.27, 0.35, 0.45, 0.55, 0.7, 0.9, 1.2];
/** Places of the grid itself, so that nothing is interpolated where it is asked: m, and radians from the table's zero. */
const RINGS = { plane: [0.28, 0.55, 0.97, 1.75, 2.8, 5], field: [0.26, 0.52, 0.92, 1.6, 3, 7] };
const SPOKE = { plane: Math.PI / 12, field: Math.PI / 10 };
/** Putts: misses are looked up straight between coarse places when the program is solved, in the fine table here. */
const LOOK_UP = 0.005;

describe('the best policy', () => {
  it.each([
    ['a plane', PLANE],
    ['steep ground and a beginner', STEEP],
    ['a player with habits', BIASED],
    ['a green', GREEN],
  ])('is beaten by no fixed pace anywhere: %s', (_, question) => {
    const { putt } = question;
    const player = allowing(question.player);
    const table = tableOf(question);
    const { kind } = putt.surface;
    for (const distance of RINGS[kind])
      for (const spoke of [0, 4, 9, 12]) {
        const angle = table.zero + spoke * SPOKE[kind];
        const x = distance * Math.cos(angle);
        const y = distance * Math.sin(angle);
        const ball = { x: putt.hole.x + x, y: putt.hole.y + y };
        const { rows } = comparePaces({ ...putt, ball }, PACES, player, table, false);
        const least = Math.min(...rows.map(({ odds }) => odds?.expectedPutts ?? Number.POSITIVE_INFINITY));
        const told = holingOutAt(table, x, y).expectedPutts;
        expect(told - least, `${distance} m, spoke ${spoke}`).toBeLessThan(LOOK_UP);
      }
  });

  it.each([
    ['a plane', PLANE],
    ['a player with habits', BIASED],
    ['a green', GREEN],
  ])(
    'needs no more putts than one sensible pace from any place, and is worth something: %s',
    (_, question) => {
      const { decisions, sensible } = solvedOf(question).program;
      const best = policyIteration(decisions, sensible).values;
      const plain = evaluatePolicy(decisions, sensible);
      // Rounding of sums of a few hundred numbers below ten.
      for (let i = 0; i < best.length; i++) expect(best[i]).toBeLessThanOrEqual(plain[i] + 1e-11);
      expect(Math.max(...plain.map((putts, i) => putts - best[i]))).toBeGreaterThan(0.005);
    },
  );

  it('plays a player with habits as one without them, who allows for both in full', () => {
    const { putt, player } = BIASED;
    const table = tableOf(BIASED);
    const without = prepareNextPutts(putt, allowing(player));
    for (const [distance, angle] of [
      [0.5, 0.4],
      [1.3, 1.5],
      [4, 2.4],
      [9, 4],
    ]) {
      const bearing = table.zero + angle;
      const [x, y] = [distance * Math.cos(bearing), distance * Math.sin(bearing)];
      // The same sums: nothing but rounding.
      expect(holingOutAt(table, x, y).expectedPutts).toBeCloseTo(
        holingOutAt(without, x, y).expectedPutts,
        12,
      );
    }
  });
});

describe('the table of holing out', () => {
  it.each([
    ['a plane', PLANE],
    ['steep ground and a beginner', STEEP],
    ['a green', GREEN],
  ])('holds chances that make one and a mean that fits them, everywhere: %s', (_, question) => {
    const table = tableOf(question);
    for (let distance = 0.06; distance < 14; distance *= 1.3)
      for (let angle = 0; angle < 2 * Math.PI; angle += 0.37) {
        const { expectedPutts, chances, pace } = holingOutAt(
          table,
          distance * Math.cos(angle),
          distance * Math.sin(angle),
        );
        const { one, two, three, more } = chances;
        for (const chance of [one, two, three, more]) expect(chance).toBeGreaterThanOrEqual(0);
        // Rounding.
        expect(Math.abs(one + two + three + more - 1)).toBeLessThan(1e-12);
        // More than three is four at least; rounding.
        expect(expectedPutts).toBeGreaterThan(one + 2 * two + 3 * three + 4 * more - 1e-9);
        expect(pace).toBeGreaterThan(0);
      }
  });

  it('is mirrored about the fall line of a plane', () => {
    const table = tableOf(PLANE);
    for (const [distance, angle] of [
      [0.5, 0.4],
      [1.3, 1.5],
      [4, 2.4],
      [9, 2.9],
    ]) {
      const [left, right] = [1, -1].map((side) => {
        const bearing = table.zero + side * angle;
        return holingOutAt(table, distance * Math.cos(bearing), distance * Math.sin(bearing));
      });
      // Rounding.
      expect(Math.abs(left.expectedPutts - right.expectedPutts)).toBeLessThan(1e-9);
      expect(Math.abs(left.pace - right.pace)).toBeLessThan(1e-9);
    }
  });

  it('tells how far it is, never backwards, up to all', () => {
    const shares: number[] = [];
    const table = prepareNextPutts(PLANE.putt, PLANE.player, { onProgress: (share) => shares.push(share) });
    expect(table).toEqual(tableOf(PLANE));
    expect(shares).toEqual([...shares].sort((first, second) => first - second));
    expect(shares.length).toBeGreaterThan(10);
    // Rounding of a sum of two shares.
    expect(Math.abs(shares[shares.length - 1] - 1)).toBeLessThan(1e-12);
  });
});
