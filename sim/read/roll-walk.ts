/**
 * Lines on ground without a closed form, found by rolling.
 *
 * Two unknowns, heading and energy v^2, two equations: the path crosses the hole centre and the ball rests the pace past
 * it. Both are solved together (Newton, the derivatives kept up to date by Broyden's rule), because where a ball rests is a
 * smooth function of its launch, while along the lines the launch speed itself has a smallest value near the dying line: a
 * walk in speed cannot get round it (it reported "no line" for one soft sidehill putt in twenty). The first line starts
 * from that of the plane with the same mean slope; later ones from the nearest pace known, by shorter strides of pace when
 * a stride fails. Leaves out: ground on which the line for a pace takes more than MOST_ROLLS to find.
 */
import { frictionOf, steepestHold } from '../roll/plane.ts';
import { bearingOf, foldAngle, lengthOf } from '../roll/roll.ts';
import { planeSurface } from '../surface/plane.ts';
import { sampleSurface } from '../surface/sample.ts';
import type { HeightSample, Putt } from '../types.ts';
import type { CentreLine, LineSearch } from './centre.ts';
import { planeLines } from './plane-line.ts';
import { skidLines } from './skid-line.ts';

/** The path crosses the hole centre within this, m; a five-thousandth of the 0.5 mm asked of aim offsets. */
const CENTRE_TOLERANCE = 1e-7;
/** The rest lies this close to the pace asked for, m; a thousandth of the 1 mm asked of rests. */
const PACE_TOLERANCE = 1e-6;
/** Steps of one solution; four or five will do when the start is near. */
const MOST_STEPS = 12;
/** Longest step in heading, radians, and in energy, as a share. */
const LONGEST_TURN = 0.25;
const LONGEST_PUSH = 0.35;
/** Rolls after which a pace is given up. */
const MOST_ROLLS = 400;
/** A stride of pace this short that still fails ends the walk, as a ratio. */
const SHORTEST_STRIDE = 1.05;
/** Paces a first line is sought for when the one asked for is not found directly, m. */
const EASIER = [0.4, 0.8, 1.6, 3];
/** A first line that starts farther off than this is compared with others, radians: a lob may have been found. */
const SUSPECT_START = 0.5;
/** Starts looked at for other lines: this many on each side of the hole, out to this, radians. */
const LOOKS_ASIDE = 9;
const FARTHEST_ASIDE = 1.35;
/** Steps spent on each other line, and rolls after which no more are sought. */
const STEPS_ASIDE = 8;
const MOST_ROLLS_ASIDE = 45;
/** Lines closer than this are the same, radians. */
const SAME_START = 0.01;
/** Looks at the ground between ball and hole for its mean slope, and the steepest mean worth starting from, of what holds. */
const LOOKS = 12;
const STEEPEST_MEAN = 0.8;

/** A line with the derivatives of (miss, pace) by (heading, energy), and when its ball crosses the hole's centre, s. */
export interface RolledLine extends CentreLine {
  readonly time: number;
  readonly slopes: Slopes;
}
type Slopes = readonly [number, number, number, number];

interface Shot {
  readonly heading: number;
  readonly energy: number;
}

export class RollWalk {
  private readonly known: RolledLine[] = [];

  constructor(
    readonly putt: Putt,
    readonly search: LineSearch,
  ) {}

  /** The centre line whose ball would rest `pace` metres past the covered hole. */
  lineAt(pace: number): RolledLine | undefined {
    this.search.rolls = 0;
    if (!(pace > 0)) return undefined;
    if (this.known.length === 0 && !this.begin(pace)) return undefined;
    const apart = (line: CentreLine): number => Math.abs(Math.log(line.pace / pace));
    let current = this.known.reduce((best, line) => (apart(line) < apart(best) ? line : best));
    let target = pace;
    while (this.search.rolls < MOST_ROLLS) {
      if (Math.abs(current.pace - pace) < PACE_TOLERANCE) return current;
      const next = this.solve(current, target, current.slopes, MOST_STEPS);
      if (next !== undefined) {
        this.known.push(next);
        current = next;
        target = pace;
        continue;
      }
      target = Math.sqrt(target * current.pace);
      if (Math.max(target / current.pace, current.pace / target) < SHORTEST_STRIDE) break;
    }
    return undefined;
  }

  /**
   * Another line with the same pace: where the miss changes sign between starts all round, at the energy of the line
   * known, a line may be near. The one that starts nearest to the hole, if there are several. About 20 rolls, at most 60.
   */
  otherLine(line: CentreLine): RolledLine | undefined {
    const { pass } = this.search;
    const zero = bearingOf(this.putt);
    const energy = line.speed ** 2;
    this.search.rolls = 0;
    let other: RolledLine | undefined;
    let before = Number.NaN;
    for (let i = -LOOKS_ASIDE; i <= LOOKS_ASIDE && this.search.rolls < MOST_ROLLS_ASIDE; i++) {
      const heading = zero + (i / LOOKS_ASIDE) * FARTHEST_ASIDE;
      this.roll({ heading, energy });
      const { miss } = pass;
      const left = heading - FARTHEST_ASIDE / LOOKS_ASIDE;
      const holdsKnown = foldAngle(line.heading - left) * foldAngle(line.heading - heading) <= 0;
      // A change of sign that the line known does not explain, or none where it should have made one.
      if (!Number.isNaN(before) && before * miss < 0 !== holdsKnown) {
        const guess = holdsKnown ? left : left + ((heading - left) * before) / (before - miss);
        const found = this.solve({ heading: guess, speed: line.speed }, line.pace, undefined, STEPS_ASIDE);
        if (
          found !== undefined &&
          Math.abs(foldAngle(found.heading - line.heading)) > SAME_START &&
          (other === undefined ||
            Math.abs(foldAngle(found.heading - zero)) < Math.abs(foldAngle(other.heading - zero)))
        )
          other = found;
      }
      before = miss;
    }
    return other;
  }

  /** A first line, for this pace or an easier one. */
  private begin(pace: number): boolean {
    for (const one of [pace, ...EASIER]) {
      const guess = this.planeGuess(one);
      const found = this.solve(
        { heading: guess.heading, speed: Math.sqrt(guess.energy) },
        one,
        undefined,
        MOST_STEPS,
      );
      if (found === undefined) continue;
      const start = (line: CentreLine): number => Math.abs(line.heading - bearingOf(this.putt));
      this.known.push(found);
      if (start(found) > SUSPECT_START) {
        const other = this.otherLine(found);
        if (other !== undefined && start(other) < start(found)) this.known[0] = other;
      }
      return true;
    }
    return false;
  }

  /** The line on the plane with the mean slope between ball and hole. */
  private planeGuess(pace: number): Shot {
    const { putt } = this;
    const ground: HeightSample = { height: 0, gradientX: 0, gradientY: 0 };
    let meanX = 0;
    let meanY = 0;
    let looks = 0;
    for (let i = 0; i < LOOKS; i++) {
      const share = (i + 0.5) / LOOKS;
      const x = putt.ball.x + share * (putt.hole.x - putt.ball.x);
      const y = putt.ball.y + share * (putt.hole.y - putt.ball.y);
      if (!sampleSurface(putt.surface, x, y, ground)) continue;
      meanX += ground.gradientX;
      meanY += ground.gradientY;
      looks++;
    }
    const slope = Math.hypot(meanX, meanY) / Math.max(looks, 1);
    const surface = planeSurface({
      slope: Math.min(slope, STEEPEST_MEAN * steepestHold(putt.greenSpeed)),
      downhill: Math.atan2(-meanY, -meanX),
    });
    const line = (putt.skid ? skidLines : planeLines)({ ...putt, surface })?.lineAt(pace);
    return line === undefined
      ? {
          heading: bearingOf(putt),
          energy: 2 * frictionOf(putt.greenSpeed) * (lengthOf(putt) + pace),
        }
      : { heading: bearingOf(putt) + foldAngle(line.heading - bearingOf(putt)), energy: line.speed ** 2 };
  }

  /** Pace of the pass in hand, negative when the ball stops short; Infinity when it does not stop on the green. */
  private signedPace(): number {
    const { pass, roller } = this.search;
    if (pass.status !== 'atRest') return Number.POSITIVE_INFINITY;
    const past = Math.hypot(pass.restX - roller.hole.x, pass.restY - roller.hole.y);
    return pass.missSpeed > 0 ? past : -past;
  }

  private roll(shot: Shot): void {
    this.search.rolls++;
    this.search.roller.pass(shot.heading, Math.sqrt(shot.energy), this.search.pass);
  }

  /** Derivatives by differences, about a shot whose errors are known; undefined when a ball nearby does not stop. */
  private slopesAt(shot: Shot, miss: number, pace: number): Slopes | undefined {
    const { pass } = this.search;
    const turn = 1e-5;
    const push = 1e-5 * shot.energy;
    this.roll({ heading: shot.heading + turn, energy: shot.energy });
    const [missTurned, paceTurned] = [pass.miss, this.signedPace()];
    this.roll({ heading: shot.heading, energy: shot.energy + push });
    const slopes: Slopes = [
      (missTurned - miss) / turn,
      (pass.miss - miss) / push,
      (paceTurned - pace) / turn,
      (this.signedPace() - pace) / push,
    ];
    return slopes.every(Number.isFinite) ? slopes : undefined;
  }

  /** Solve for a pace from a shot nearby. `told`: derivatives there, if known. */
  private solve(
    from: { readonly heading: number; readonly speed: number },
    pace: number,
    told: Slopes | undefined,
    mostSteps: number,
  ): RolledLine | undefined {
    const { pass } = this.search;
    let shot: Shot = { heading: from.heading, energy: from.speed ** 2 };
    this.roll(shot);
    let miss = pass.miss;
    let over = this.signedPace() - pace;
    // A guess too firm for the green: take off energy until the ball stays on.
    for (let i = 0; i < 6 && over === Number.POSITIVE_INFINITY; i++) {
      shot = { heading: shot.heading, energy: 0.85 * shot.energy };
      this.roll(shot);
      miss = pass.miss;
      over = this.signedPace() - pace;
    }
    if (!Number.isFinite(over)) return undefined;
    let slopes = told;
    let fresh = false;
    for (let step = 0; step < mostSteps; step++) {
      if (Math.abs(miss) < CENTRE_TOLERANCE && Math.abs(over) < PACE_TOLERANCE && slopes !== undefined)
        return {
          heading: shot.heading,
          speed: Math.sqrt(shot.energy),
          pace: over + pace,
          time: pass.missTime,
          slopes,
        };
      if (slopes === undefined) {
        slopes = this.slopesAt(shot, miss, over + pace);
        fresh = true;
        if (slopes === undefined) return undefined;
      }
      const [a, b, c, d]: Slopes = slopes;
      const determinant = a * d - b * c;
      const turn = (b * over - d * miss) / determinant;
      const push = (c * miss - a * over) / determinant;
      // Keep the direction of a step that is too long.
      let share = Math.min(1, LONGEST_TURN / Math.abs(turn), (LONGEST_PUSH * shot.energy) / Math.abs(push));
      if (!(share > 0)) return undefined;
      const size = Math.hypot(miss, over);
      let next = shot;
      let nextMiss = miss;
      let nextOver = over;
      for (let tries = 0; ; tries++) {
        next = { heading: shot.heading + share * turn, energy: shot.energy + share * push };
        this.roll(next);
        nextMiss = pass.miss;
        nextOver = this.signedPace() - pace;
        if (Number.isFinite(nextOver) && Math.hypot(nextMiss, nextOver) < 1.5 * size) break;
        if (tries === 3) break;
        share /= 3;
      }
      if (!Number.isFinite(nextOver)) return undefined;
      if (Math.hypot(nextMiss, nextOver) >= 1.5 * size) {
        // Old derivatives mislead: take new ones here, once.
        if (fresh) return undefined;
        slopes = undefined;
        continue;
      }
      // Broyden: the least change of the derivatives that explains what the step did. Energies are scaled to turns.
      const scale = shot.energy;
      const turned = share * turn;
      const pushed = (share * push) / scale;
      const square = turned * turned + pushed * pushed;
      const missLeft = nextMiss - miss - (a * turned + b * pushed * scale);
      const overLeft = nextOver - over - (c * turned + d * pushed * scale);
      const slow = Math.hypot(nextMiss, nextOver) > 0.5 * size && !fresh;
      slopes = slow
        ? undefined
        : [
            a + (missLeft * turned) / square,
            b + (missLeft * pushed) / square / scale,
            c + (overLeft * turned) / square,
            d + (overLeft * pushed) / square / scale,
          ];
      fresh = false;
      shot = next;
      miss = nextMiss;
      over = nextOver;
    }
    return undefined;
  }
}
