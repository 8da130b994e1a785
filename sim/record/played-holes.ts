/**
 * Putts as they were written down -> holes as they were putted out. Answers for: order, what belongs to one turn on the green, how
 * it ended, where each putt came to rest. Leaves out: what that is worth (strokes-gained.ts) and how often (distance-bands.ts).
 *
 * What counts. Only strokes of kind 'putt' count as putts. A turn on the green begins with the first of them and ends when the ball
 * is holed, when the next is conceded, when the ball leaves the green (the next stroke is from off it) or when nothing more was
 * recorded. After a stroke from off the green a new turn begins, marked `fromOffGreen`. A hole on which nothing was struck from
 * the green has no turn.
 *
 * Odd data never stops the review:
 * - a gap in the strokes (1, 3) counts as a slip of the pen, not as a putt that is missing: what was recorded was played;
 * - the same stroke twice: both count, the earlier recorded first;
 * - whatever follows a holed or a conceded ball is left out: the hole was over;
 * - a leave that is not where the next putt was played from: the next putt's distance is believed, so that strokes gained add up.
 */
import type { RecordedPutt } from './record.ts';

/** One putt from on the green, and where the ball came to rest. */
export interface StruckPutt {
  readonly putt: RecordedPutt;
  /** Ball to hole after it, m; 0: in the hole; undefined: not recorded, or off the green. */
  readonly rest: number | undefined;
}

/** How a turn on the green ended; 'unfinished': with a miss after which nothing was recorded. */
export type HoleEnd = 'holed' | 'conceded' | 'leftGreen' | 'unfinished';

/** One turn on the green: from the first putt there to the last. */
export interface PlayedHole {
  readonly roundId: string;
  readonly hole: number;
  /** The first putt from the green. */
  readonly first: RecordedPutt;
  /** Struck from the green, in order; at least one. */
  readonly putts: readonly StruckPutt[];
  readonly end: HoleEnd;
  /** A stroke from off the green came before. */
  readonly fromOffGreen: boolean;
  /** After the first putt: m to the hole, 0 when holed, undefined when not known. */
  readonly leave: number | undefined;
  /**
   * Three putts or more: known when holed, and as soon as two have missed (a third, struck or conceded, follows anyhow);
   * undefined: not known. A concession after one miss is not known, so three-putts of rounds with many gimmes are a little overstated.
   */
  readonly threePutted: boolean | undefined;
}

const before = (a: RecordedPutt, b: RecordedPutt): number =>
  a.stroke - b.stroke || a.recordedAt - b.recordedAt || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/** Puts them in order; most were written down in order, and looking is ten times faster than sorting. */
function inOrder(strokes: RecordedPutt[]): RecordedPutt[] {
  for (let i = 1; i < strokes.length; i++)
    if (before(strokes[i - 1], strokes[i]) > 0) return strokes.sort(before);
  return strokes;
}

/** Turns on the green of one hole. @param strokes all of its strokes, in order */
function turnsOf(strokes: readonly RecordedPutt[]): PlayedHole[] {
  const turns: PlayedHole[] = [];
  let putts: StruckPutt[] = [];
  let fromOffGreen = false;
  const close = (end: HoleEnd): void => {
    if (putts.length === 0) return;
    const [{ putt: first, rest: leave }] = putts;
    const { roundId, hole } = first;
    const threePutted = end === 'holed' ? putts.length >= 3 : putts.length >= 2 ? true : undefined;
    turns.push({ roundId, hole, first, putts, end, fromOffGreen, leave, threePutted });
    putts = [];
  };
  for (let i = 0; i < strokes.length; i++) {
    const stroke = strokes[i];
    if (stroke.kind === 'conceded') {
      close('conceded');
      return turns;
    }
    if (stroke.kind === 'offGreen') {
      close('leftGreen');
      if (stroke.holed) return turns;
      fromOffGreen = true;
      continue;
    }
    if (stroke.holed) {
      putts.push({ putt: stroke, rest: 0 });
      close('holed');
      return turns;
    }
    const next = i + 1 < strokes.length ? strokes[i + 1] : undefined;
    const rest =
      next === undefined ? stroke.miss?.leave : next.kind === 'offGreen' ? undefined : next.distance;
    putts.push({ putt: stroke, rest });
  }
  close('unfinished');
  return turns;
}

interface Round {
  /** When its first stroke was recorded. */
  begun: number;
  /** Strokes by number of the hole: a list is ten times as fast as a second map. */
  readonly holes: (RecordedPutt[] | undefined)[];
}

/**
 * All turns on the green: rounds in the order in which they were first written down, holes by number.
 * @param putts of any rounds, in any order: the answer does not depend on it
 */
export function playedHoles(putts: readonly RecordedPutt[]): PlayedHole[] {
  const rounds = new Map<string, Round>();
  let round: Round | undefined;
  let last: string | undefined;
  for (const putt of putts) {
    // Putts of a round mostly follow one another: most need no looking up.
    if (round === undefined || putt.roundId !== last) {
      last = putt.roundId;
      round = rounds.get(last);
      if (round === undefined) {
        round = { begun: putt.recordedAt, holes: [] };
        rounds.set(last, round);
      }
    }
    round.begun = Math.min(round.begun, putt.recordedAt);
    const strokes = round.holes[putt.hole];
    if (strokes === undefined) round.holes[putt.hole] = [putt];
    else strokes.push(putt);
  }
  const turns: PlayedHole[] = [];
  const inTurn = [...rounds].sort(
    ([id, { begun }], [otherId, other]) => begun - other.begun || (id < otherId ? -1 : 1),
  );
  for (const [, { holes }] of inTurn)
    for (const strokes of holes) if (strokes !== undefined) turns.push(...turnsOf(inOrder(strokes)));
  return turns;
}
