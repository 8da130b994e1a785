/**
 * The shapes that pass between the layers of the engine.
 *
 * Answers for: names, units and meaning of every value another layer may hold. Leaves out: any computation.
 * Frame: x to the right, y away, metres; angles in radians, counter-clockwise, unless the name ends in Deg.
 * "Start angle" is measured from the straight line ball -> hole, positive to the left as seen from the ball.
 */

/** A point or vector in the ground plane, metres. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** What a rolling ball needs to know of the ground: height (m) and its gradient (m per m). */
export interface HeightSample {
  height: number;
  gradientX: number;
  gradientY: number;
}

export interface PlaneSurface {
  readonly kind: 'plane';
  /** Rise over run, 0.02 = 2%. */
  readonly slope: number;
  /** Direction in which a ball would run off, radians from +x. */
  readonly downhill: number;
}

export interface FieldSurface {
  readonly kind: 'field';
  /** Lower left grid node, metres. */
  readonly origin: Point;
  readonly spacing: number;
  readonly columns: number;
  readonly rows: number;
  /** Heights in metres, row by row, x fastest. */
  readonly heights: Float64Array;
}

/** A green to putt on. Make one with `planeSurface`, `fieldSurface` or `generateGreen`. */
export type Surface = PlaneSurface | FieldSurface;

/**
 * Which balls drop. rim: a rigid ball on a sharp rim, with lip-outs; simple: a published parabola of speed against offset,
 * freeFall: what falls in without touching, a lower bound, for checks. In the order they are offered.
 */
export const CAPTURES = ['rim', 'simple', 'freeFall'] as const;
export type CaptureName = (typeof CAPTURES)[number];
/** Those a person chooses from: a lower bound is nobody's hole. */
export const OFFERED_CAPTURES = ['rim', 'simple'] as const satisfies readonly CaptureName[];
export type OfferedCapture = (typeof OFFERED_CAPTURES)[number];

/** One putt to be judged: where from, where to, on what. */
export interface Putt {
  readonly surface: Surface;
  /** Stimpmeter reading in metres (10 ft = 3.048). */
  readonly greenSpeed: number;
  readonly ball: Point;
  readonly hole: Point;
  readonly capture: CaptureName;
  /** Struck without spin, the ball slides before it rolls (MODEL.md section 1, Skid). Default: it rolls from the start. */
  readonly skid?: boolean;
}

export type RollStatus = 'holed' | 'atRest' | 'neverStops' | 'leftSurface';

/** A whole roll, for drawing and for checking. */
export interface Roll {
  readonly status: RollStatus;
  /** Where the ball ended: at rest, in the hole (its centre), or where it left; undefined when it never stops. */
  readonly rest: Point | undefined;
  /** Seconds from the strike to the end. */
  readonly time: number;
  /** Path as x, y, t triples (m, m, s), from the ball to the end, dense enough to draw. */
  readonly path: Float64Array;
  /** It touched the hole, left it again and rolled on to `rest`. */
  readonly lippedOut: boolean;
  /** When the ball met the hole: speed (m/s) and signed offset b (m, positive: hole centre lies to the left of travel). */
  readonly arrival: { readonly speed: number; readonly offset: number } | undefined;
  /** Work done: surface evaluations (0 for the closed form). */
  readonly evaluations: number;
}

/** A band of values that still drops, others held. */
export interface Band {
  readonly low: number;
  readonly high: number;
}

/** A line without what takes longest to find: its path and bands. */
export interface LineSummary {
  readonly status: 'ok';
  /** Radians from ball->hole, positive left. */
  readonly start: number;
  /** Launch speed, m/s. */
  readonly speed: number;
  /** Beside the hole centre where the start line passes it, m, positive left; NaN never: undefined when the start is 90 degrees or more off. */
  readonly aimOffset: number | undefined;
  /** Largest distance of the path from the straight line ball->hole before the hole, m, signed (positive left). */
  readonly curveHeight: number;
  /** Where that is. */
  readonly apex: Point;
  /** Speed at the hole centre of the covered hole, m/s. */
  readonly arrivalSpeed: number;
  /** Direction of travel at the hole centre, radians from +x. */
  readonly entry: number;
  /** Seconds to the hole centre. */
  readonly time: number;
  /** Rest with the hole covered. */
  readonly rest: Point;
  /** Rolls tried by the solver. */
  readonly rolls: number;
}

export interface Line extends LineSummary {
  /** Path to the hole centre then on to rest (covered hole), x, y, t triples. */
  readonly path: Float64Array;
  /** Start angles (radians, same zero as start) that still drop at this speed; undefined: none. */
  readonly startBand: Band | undefined;
  /** Paces (m past) on this start line that still drop; negative low means "just reaches"; undefined: none. */
  readonly paceBand: Band | undefined;
  /** Another line exists that takes the long way round: its start, radians. */
  readonly otherStart: number | undefined;
}

export interface NoLine {
  readonly status: 'noLine';
  /** A sentence for the person: why there is none. */
  readonly reason: string;
}

export type Read = Line | NoLine;

/** A player's errors, MODEL.md section 3. */
export interface Player {
  /** SD of the start direction about the one meant (aim and stroke), radians. */
  readonly lineSd: number;
  /** SD of the distance rolled about the one meant (technique, surface of the green), share of the distance. */
  readonly paceSd: number;
  /** Mean error of that distance, share; above 0 too far. */
  readonly paceBias: number;
  /** SD of the slope as seen about the true one, along and across alike and independent, rise over run (0.004 = 0.4%). */
  readonly slopeSd: number;
  /** SD of the green speed as seen about the true one, share. */
  readonly speedSd: number;
  /** Share by which all slope is seen too large; below 0 too small. */
  readonly readBias: number;
}

export interface Preset {
  readonly id: string;
  readonly name: string;
  /** What the values are and where they come from. */
  readonly source: string;
  readonly player: Player;
  /** Players who meet the same record about as well, from mostly stroke to mostly reading. */
  readonly family: readonly Player[];
}

/** Chances for one read at one pace; shares of all putts. holed + short + high + low = 1. */
export interface Odds {
  readonly status: 'ok';
  readonly holed: number;
  /** Missed and finished before the hole (its rest is nearer the ball than the hole, along the ball->hole line; a lip-out is not short). */
  readonly short: number;
  /** Missed past on the high side. */
  readonly high: number;
  readonly low: number;
  /** Of `high` and `low`, those that touched the hole and left it again; 0 under a rule that knows no lip-outs. */
  readonly lippedOut: number;
  /** Share that takes at least three putts. */
  readonly threePutt: number;
  readonly expectedPutts: number;
  /** Distance left after a miss, m: median and the 10th and 90th percentile among misses. */
  readonly leaveMedian: number;
  readonly leaveP10: number;
  readonly leaveP90: number;
}

export interface PaceRow {
  /** Metres past the covered hole. */
  readonly pace: number;
  readonly read: LineSummary | NoLine;
  /** undefined where the read has no line. */
  readonly odds: Odds | undefined;
}

export interface Comparison {
  readonly rows: readonly PaceRow[];
  /** Pace (m) with fewest expected putts and pace that holes most, refined between rows; undefined when no row has a line. */
  readonly best:
    | {
        readonly fewestPutts: number;
        /** At that pace. */
        readonly odds: Odds;
        readonly mostHoled: number;
      }
    | undefined;
}

/** Which way a putt breaks, as seen from the ball. */
export type BreakWay = 'leftToRight' | 'rightToLeft' | 'straight';
/** Which way a putt runs over the ground. */
export type Climb = 'up' | 'down' | 'level';
