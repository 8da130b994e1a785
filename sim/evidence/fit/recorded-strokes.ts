/**
 * What one recorded outcome says of a player: the strokes it may have been, on all grounds its words allow. Answers for: a few hundred
 * weighted strokes that stand for them, and the chance of the outcome for any player. Leaves out: the record's own shapes (outcomes.ts).
 *
 * Of all strokes that fit, some are taken, evenly through their weight for some player, each with weight / (chance to be taken): sums over
 * them are sums over all, exactly for that player, and with a noise that grows with the distance from him. That noise lowers the mean
 * logarithm of a chance, by more the farther a player is: over hundreds of putts it would draw a fit to the player whose strokes were taken
 * (met: half of an under-read lost). So they are taken twice: for anybody, then for the player found (fit-errors.ts). And an outcome
 * likelier than not is the rest of its opposite: of a tap-in the few strokes that miss are looked at, not the many that drop, whose noise a
 * record of hundreds of tap-ins counts hundreds of times (met: fits of 800 putts that left the truth far outside).
 */
import { dropShare, type GroundStrokes, OPEN, shareWithin, sharpnessOf } from './ground-strokes.ts';
import { PlayerStrokes, type Someone, type Spot, type StrokeList } from './player-strokes.ts';
import { type GroundWords, type MissChance, missChance, type WrittenMiss } from './words.ts';

/** What is known of one stroke's end. */
export type Outcome = 'holed' | WrittenMiss;

/** A spot with its strokes, its place in the list of all, and the chance that it was this one before the words were heard. */
export interface LikelySpot extends Spot {
  readonly index: number;
  /** What was said of it; undefined: all that was said is in `share`. */
  readonly words: GroundWords | undefined;
  /** It is high on the other side than the word for its break says. */
  readonly turned: boolean;
  readonly strokes: GroundStrokes;
  readonly share: number;
}

/** Strokes that a recorded outcome may have been. */
export interface RecordedStrokes extends StrokeList {
  readonly holed: boolean;
  /** The outcome is that the putt was not one of these. */
  readonly opposite: boolean;
  readonly weight: Float64Array;
  readonly needs: Float64Array;
}

export interface Answers {
  readonly startedAsMeant?: boolean | undefined;
  readonly paceAsMeant?: boolean | undefined;
}

interface Gathered {
  readonly spot: number[];
  readonly start: number[];
  readonly energy: number[];
  readonly weight: number[];
  readonly needs: number[];
}

function gather(
  into: Gathered,
  spot: number,
  { strokes, share }: LikelySpot,
  outcome: 'holed' | MissChance,
): void {
  const add = (i: number, chance: number): void => {
    into.spot.push(spot);
    into.start.push(strokes.start[i]);
    into.energy.push(strokes.energy[i]);
    into.weight.push(share * strokes.weight[i] * chance);
    into.needs.push(strokes.needs[i]);
  };
  for (let i = 0; i < strokes.count; i++) {
    if (outcome === 'holed') {
      if (strokes.needs[i] < OPEN) add(i, 1);
      continue;
    }
    if (strokes.needs[i] < 1 / OPEN) continue;
    const leave = strokes.leave[i];
    if (leave < outcome.nearest || leave > outcome.farthest) continue;
    const chance = outcome.of(strokes.beside[i], strokes.along[i], leave);
    if (chance > 0) add(i, chance);
  }
}

/** Chance of what was said there. */
const wholeOf = (spots: readonly LikelySpot[], reference: PlayerStrokes): number =>
  spots.reduce((sum, { share, words }, k) => sum + share * (words ? reference.words(k, words) : 1), 0);
/** From this chance on the opposite is looked at. */
const LIKELIER = 0.5;

interface Looked {
  readonly holed: boolean;
  readonly all: Gathered;
  /** How much each counts for the player looked for. */
  readonly heavy: number[];
  readonly total: number;
}

export interface StrokesWanted {
  /** Whose strokes say which matter. */
  readonly wide: Someone;
  /** How many are taken. */
  readonly taken: number;
}

/** @param reference the strokes of whom is looked for, on these spots */
function lookAt(
  spots: readonly LikelySpot[],
  words: StrokeList['words'],
  outcomeOn: (turned: boolean) => Outcome,
  reference: PlayerStrokes,
  rim: number,
): Looked {
  const written = [false, true].map((turned) => {
    const outcome = outcomeOn(turned);
    return outcome === 'holed' ? outcome : missChance(outcome);
  });
  const all: Gathered = { spot: [], start: [], energy: [], weight: [], needs: [] };
  for (let k = 0; k < spots.length; k++) gather(all, k, spots[k], written[spots[k].turned ? 1 : 0]);
  const holed = written[0] === 'holed';
  const densities = reference.densities({
    count: all.spot.length,
    spot: Uint16Array.from(all.spot),
    start: Float64Array.from(all.start),
    energy: Float64Array.from(all.energy),
    words,
    ways: Uint8Array.from(all.spot, (k) => (spots[k].turned ? 1 : 0)),
    startedAsMeant: undefined,
    paceAsMeant: undefined,
  });
  const heavy = all.weight.map((weight, i) => {
    const drops = dropShare(all.needs[i], rim);
    // Near the edge of the hole either may be, for another hole.
    const may = Math.max(0.1, holed ? drops : 1 - drops);
    return weight * may * densities[i];
  });
  return { holed, all, heavy, total: heavy.reduce((sum, value) => sum + value, 0) };
}

/** @param spots with the chance of each, at least one */
export function recordedStrokes(
  spots: readonly LikelySpot[],
  outcomeOn: (turned: boolean) => Outcome,
  { wide, taken }: StrokesWanted,
  { startedAsMeant, paceAsMeant }: Answers = {},
): RecordedStrokes {
  const words = [false, true].map((turned) => spots.find((spot) => spot.turned === turned)?.words);
  const reference = new PlayerStrokes(spots);
  reference.fill(wide);
  let looked = lookAt(spots, words, outcomeOn, reference, wide.rim);
  // An answer is of this stroke: then nothing is the rest of anything.
  const alone = startedAsMeant === undefined && paceAsMeant === undefined;
  const opposite = alone && looked.holed && looked.total > LIKELIER * wholeOf(spots, reference);
  if (opposite) looked = lookAt(spots, words, () => ({}), reference, wide.rim);
  const { holed, all, heavy, total } = looked;
  const kept: { i: number; times: number }[] = [];
  if (all.weight.length <= taken || !(total > 0))
    for (let i = 0; i < all.weight.length; i++) kept.push({ i, times: 1 });
  else {
    const step = total / taken;
    let next = step / 2;
    let sum = 0;
    for (let i = 0; i < heavy.length; i++) {
      const chance = heavy[i] / step;
      // Heavier than a step: always, as it is.
      if (chance >= 1) {
        kept.push({ i, times: 1 });
        continue;
      }
      sum += heavy[i];
      if (sum < next) continue;
      next += step;
      kept.push({ i, times: 1 / chance });
    }
  }
  const pick = (from: readonly number[]): Float64Array => Float64Array.from(kept, ({ i }) => from[i]);
  return {
    holed,
    opposite,
    count: kept.length,
    spot: Uint16Array.from(kept, ({ i }) => spots[all.spot[i]].index),
    start: pick(all.start),
    energy: pick(all.energy),
    weight: Float64Array.from(kept, ({ i, times }) => times * all.weight[i]),
    needs: pick(all.needs),
    words,
    ways: Uint8Array.from(kept, ({ i }) => (spots[all.spot[i]].turned ? 1 : 0)),
    startedAsMeant,
    paceAsMeant,
  };
}

/** Chance of the outcome for the player whose strokes on all spots these are. @param given chance of all that was said of the ground */
export function chanceOf(
  recorded: RecordedStrokes,
  strokes: PlayerStrokes,
  rim: number,
  given: number,
): number {
  const { holed, opposite, count, weight, needs } = recorded;
  const densities = strokes.densities(recorded);
  const sharpness = sharpnessOf(rim);
  let sum = 0;
  for (let i = 0; i < count; i++) {
    const drops = shareWithin(needs[i], rim, sharpness);
    sum += (holed ? drops : 1 - drops) * weight[i] * densities[i];
  }
  return opposite ? 1 - sum / given : sum / given;
}
