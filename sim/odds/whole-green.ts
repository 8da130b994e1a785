/**
 * Putts from any list of places on a green: the first putt at the pace that needs fewest, on its true line, and what follows
 * from the table of next putts. Made for workers: plain data in and out, a tile at a time, nothing kept between calls.
 * Leaves out: which places (green-steps.ts).
 */
import { BALL_RADIUS, HOLE_RADIUS } from '../constants.ts';
import { minimize } from '../maths/minimum.ts';
import { sampleSurface } from '../surface/sample.ts';
import type { Player, Putt } from '../types.ts';
import {
  emptyGreenMap,
  type GreenMap,
  type GreenMapOptions,
  nodePoint,
  PLACE_STATUS,
  type PlayedPlaces,
} from './green-map.ts';
import { filledIn, placesToPlay, withPlayed } from './green-steps.ts';
import { Place, SENSIBLE_PACES } from './place.ts';
import { holingOutAt, type NextPutts, nextPuttAt } from './polar-table.ts';

/** Paces looked at, m past, as in the table of next putts. */
const LOW = 0.02;
const HIGH = 1.5;
/** How far from the table's pace the best may lie, as a ratio; and the first step of the search. */
const ABOUT = 3;
const STEP = 1.5;

/** All that the places of one green share; plain data. */
export interface GreenQuestion {
  /** Its ball does not matter. */
  readonly putt: Putt;
  readonly player: Player;
  /** Of the same surface, green speed, hole, capture and player. */
  readonly table: NextPutts;
}

/**
 * Play one tile.
 * @param map only its grid is used, so an empty one of the same putt and options will do
 * @param nodes a part of what `placesToPlay` asks for; about 20 make a tile that can be waited for
 */
export function playPlaces(question: GreenQuestion, map: GreenMap, nodes: Int32Array): PlayedPlaces {
  const played: PlayedPlaces = {
    nodes,
    expected: new Float64Array(nodes.length),
    one: new Float64Array(nodes.length),
    threeOrMore: new Float64Array(nodes.length),
    pace: new Float64Array(nodes.length),
    status: new Uint8Array(nodes.length),
  };
  for (let i = 0; i < nodes.length; i++) {
    const ball = nodePoint(map, nodes[i]);
    played.status[i] = playFrom({ ...question, putt: { ...question.putt, ball } });
    if (played.status[i] !== PLACE_STATUS.played) continue;
    played.expected[i] = best[EXPECTED];
    played.one[i] = best[ONE];
    played.threeOrMore[i] = best[THREE];
    played.pace[i] = best[PACE];
  }
  return played;
}

const EXPECTED = 0;
const ONE = 1;
const THREE = 2;
const PACE = 3;
// Filled by `playFrom`: the best pace so far, and the pace in hand.
const best = new Float64Array(4);
const sums = new Float64Array(3);
const next = new Float64Array(2);

const ground = { height: 0, gradientX: 0, gradientY: 0 };

/** @returns a PLACE_STATUS; `best` is filled when it is `played` */
function playFrom({ putt, player, table }: GreenQuestion): number {
  const x = putt.ball.x - putt.hole.x;
  const y = putt.ball.y - putt.hole.y;
  if (!sampleSurface(putt.surface, putt.ball.x, putt.ball.y, ground)) return PLACE_STATUS.offGreen;
  if (Math.hypot(x, y) < HOLE_RADIUS + BALL_RADIUS) return PLACE_STATUS.inHole;
  const guess = Math.max(LOW, Math.min(HIGH, holingOutAt(table, x, y).pace));
  const around = [guess, Math.min(HIGH, guess * ABOUT), Math.max(LOW, guess / ABOUT)];
  const place =
    Place.from(putt, player, { paces: around, first: false }) ??
    Place.from(putt, player, { paces: SENSIBLE_PACES, first: false });
  if (place === undefined) return PLACE_STATUS.noLine;
  best[EXPECTED] = Number.POSITIVE_INFINITY;
  const found = minimize((steps) => ask(place, table, STEP ** steps), {
    start: logOf(Math.max(place.low, Math.min(place.high, guess))),
    step: 1,
    low: logOf(place.low),
    high: logOf(place.high),
    walks: 3,
    parabolas: 2,
  });
  return found === undefined ? PLACE_STATUS.noLine : PLACE_STATUS.played;
}

const logOf = (pace: number): number => Math.log(pace) / Math.log(STEP);

/** Expected putts at one pace; the best is kept. */
function ask(place: Place, table: NextPutts, pace: number): number {
  sums.fill(0);
  const total = place.play(pace, (share, x, y) => {
    nextPuttAt(table, x, y, next);
    sums[0] += share;
    sums[1] += share * next[0];
    sums[2] += share * next[1];
  });
  if (total === undefined) return Number.POSITIVE_INFINITY;
  const expected = 1 + sums[2] / total;
  if (expected < best[EXPECTED]) {
    best[EXPECTED] = expected;
    best[ONE] = 1 - sums[0] / total;
    best[THREE] = sums[1] / total;
    best[PACE] = pace;
  }
  return expected;
}

/** The whole map at once, for where nothing else waits: tests and the command line. */
export function wholeGreen(question: GreenQuestion, options: GreenMapOptions = {}): GreenMap {
  let map = emptyGreenMap(question.putt, options);
  for (let step = 0; step < map.strides.length; step++)
    map = filledIn(
      withPlayed(map, playPlaces(question, map, placesToPlay(map, step)), question.table),
      question.table,
    );
  return map;
}
