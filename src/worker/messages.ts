/** What may be asked of the worker and what comes back. Plain data only: everything here crosses a thread. */
import type {
  CaptureName,
  Comparison,
  CostOptions,
  CostTable,
  DieOrFirm,
  DrillExpectation,
  DrillGround,
  ErrorsFit,
  FieldSurface,
  FitErrorsOptions,
  FitRecord,
  GreenMap,
  KnownPlayer,
  Member,
  Misses,
  NextPutts,
  NoExpectation,
  PlaneSurface,
  PlayedPlaces,
  Player,
  Putt,
  PuttingDrill,
  Read,
} from '../../sim/index.ts';

/** A putt as it is sent: a field is sent once (`hold`), because the engine prepares each new one for 10 ms or more. */
export type SentPutt = Omit<Putt, 'surface'> & { readonly surface: PlaneSurface | 'held' };

/** What may be other than one thinks: a foot of green speed, half a percent of slope, either way. */
export const CASE_NAMES = ['slower', 'faster', 'gentler', 'steeper'] as const;
export type CaseName = (typeof CASE_NAMES)[number];

/** One changed condition and what it does to the choice of pace. */
export interface SensitivityCase {
  readonly name: CaseName;
  /** Expected putts firm minus die, putts; above 0: die it in. undefined: a pace has no line there. */
  readonly difference: number | undefined;
  /** Aim offsets in that condition, m, positive left. */
  readonly dieAim: number | undefined;
  readonly firmAim: number | undefined;
}

export interface TwoPaces {
  /** Metres past the covered hole. */
  readonly die: number;
  readonly firm: number;
}

export interface TwoReads {
  readonly die: Read;
  readonly firm: Read;
}

export interface TwoClouds {
  readonly die: Misses;
  readonly firm: Misses;
}

/** A drill, and who does it where. */
export interface DrillQuestion {
  readonly drill: PuttingDrill;
  readonly player: Player;
  readonly ground: DrillGround;
  readonly capture: CaptureName;
}

export interface EngineWorker {
  /** Answered as soon as the worker has started. */
  ready(): true;
  /** Keeps a field for the putts that follow; the one before is forgotten. */
  hold(surface: FieldSurface): void;
  /** Keeps a table of next putts for the comparisons that follow. */
  holdTable(table: NextPutts): void;
  read(putt: SentPutt, pace: number): Read;
  lines(putt: SentPutt, paces: TwoPaces): TwoReads;
  clouds(putt: SentPutt, paces: TwoPaces, player: Player, count: number, seed: number): TwoClouds;
  /** Keeps a map, of which only the grid matters, for the places that follow. */
  holdMap(map: GreenMap): void;
  /** One tile of the whole green; `nodes` of the map held, next putts from the table held. */
  playPlaces(putt: SentPutt, player: Player, nodes: Int32Array, nextPutts: 'held', map: 'held'): PlayedPlaces;
  compare(putt: SentPutt, paces: readonly number[], player: Player, nextPutts: 'held'): Comparison;
  /**
   * undefined: that condition makes no putt (a hole that holds no ball).
   * @param onProgress told the share done, 0 to 1 (across threads: comlink's `proxy`)
   */
  prepareNextPutts(
    putt: SentPutt,
    player: Player,
    change: CaseName | undefined,
    onProgress?: (share: number) => void,
  ): NextPutts | undefined;
  /**
   * What each step saves on a putt of each length. @param onProgress as above
   * @param onTable told the middle player's table, then that of all; one only where there is one player
   */
  costTable(
    likely: readonly Member[],
    options: Omit<CostOptions, 'onProgress'>,
    onProgress: (share: number) => void,
    onTable: (table: CostTable) => void,
  ): void;
  /**
   * Die or firm for each who may be meant, the middle one first; on a field for so many as span them. Tables of next putts stay with the
   * worker for the next putt on the same ground.
   * @param told after each: the verdict so far, the player, and putts that firm takes more than die for them; false: enough (across
   * threads: `proxy`) @param onProgress told the share done of what comes before the first
   */
  dieOrFirm(
    putt: SentPutt,
    paces: TwoPaces,
    known: KnownPlayer,
    told: (found: DieOrFirm, player: Player, difference: number | undefined) => boolean,
    onProgress: (share: number) => void,
  ): Promise<void>;
  /** Next putts of each who may be meant, or of so many as span them, by the middle one's choices. @param told, onProgress as above */
  familyTables(
    putt: SentPutt,
    known: Pick<KnownPlayer, 'player' | 'members'>,
    most: number,
    told: (member: Member, table: NextPutts) => boolean,
    onProgress: (share: number) => void,
  ): Promise<void>;
  /** A player's errors from their record; grounds stay with the worker for the next fit. @param onProgress as above */
  fitErrors(
    record: FitRecord,
    options: Pick<FitErrorsOptions, 'usualPace' | 'taps'>,
    onProgress: (share: number) => void,
  ): ErrorsFit;
  /** The score to expect of a drill. */
  drillScore(question: DrillQuestion): DrillExpectation | NoExpectation;
  /** @param nextPutts the table of that condition */
  compareCase(
    putt: SentPutt,
    change: CaseName,
    paces: TwoPaces,
    player: Player,
    nextPutts: NextPutts | undefined,
  ): SensitivityCase;
}
