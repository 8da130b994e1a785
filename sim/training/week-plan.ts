/**
 * A week of practice: named drills and reading sets in the sessions a player has, and one test to repeat.
 *
 * Answers for: what is done in which session, why, and what is tested again when. Leaves out: what errors cost and how time is shared
 * (week-costs.ts), expected scores (drill-score.ts), calendar days (sessions are counted from the first day of the week), words.
 * The rule (ours): session by session the error that is farthest behind its share comes next, by the drill done least so far, never
 * twice in a session, and never so that a cheaper error gets more time than a dearer one; drills that train all three fill what is left.
 * Deterministic: equal choices are settled by the seed.
 */
import { seededRandom } from '../random.ts';
import type { GroundKind } from './drill-ground.ts';
import { type PuttingDrill, strokesOf, type Trained } from './putting-drill.ts';
import { type ErrorCost, type TimeShare, timeShares, WEEK_ERRORS, type WeekError } from './week-costs.ts';

/** Days until a test is repeated: common practice, no source. Sooner, a drill learnt by heart passes for better putting. */
export const TEST_AGAIN = 14;
/** Shortest and longest session, minutes. */
export const SESSION_MINUTES = { min: 10, max: 120 } as const;

/** A reading set, done at home on the screen. */
export interface ReadingSet {
  readonly id: string;
  /** choice: which pace to play, which is no error of the stroke. */
  readonly trains: 'read' | 'choice';
  readonly minutes: number;
}

export interface WeekSession {
  /** Days after the first day of the week, 0 to 6. */
  readonly day: number;
  readonly minutes: number;
  readonly ground: GroundKind;
}

/** dearest: its error costs most; together: it cannot be told apart from the dearest; next: it costs less; all: trains all three. */
export type ItemReason = 'dearest' | 'together' | 'next' | 'all' | 'choice';

export interface WeekItem {
  readonly kind: 'drill' | 'reading';
  /** Of the drill or the reading set. */
  readonly activity: string;
  readonly trains: Trained | 'choice';
  readonly minutes: number;
  readonly why: ItemReason;
}

export interface WeekTest {
  readonly session: number;
  /** Place in the session. */
  readonly item: number;
  /** Days after the first day of the week. */
  readonly againOn: number;
}

export interface WeekPlan {
  readonly shares: readonly TimeShare[];
  readonly sessions: readonly (WeekSession & { readonly items: readonly WeekItem[] })[];
  /** undefined: no drill fitted in anywhere. */
  readonly test: WeekTest | undefined;
}

export interface WeekQuestion {
  readonly costs: readonly ErrorCost[];
  readonly sessions: readonly WeekSession[];
  readonly drills: readonly PuttingDrill[];
  readonly reading: readonly ReadingSet[];
  /** Whether the best pace in place of the usual one saves strokes: one set of choosing paces then. */
  readonly choosePace?: boolean;
  /** Items of sessions that stay as they are, by session. */
  readonly kept?: ReadonlyMap<number, readonly WeekItem[]>;
  readonly seed: number | string;
}

/** Reading sets in one session: on a green time is for putting. */
const READING_AT_MOST: Readonly<Record<GroundKind, number>> = { grass: 1, carpet: 2 };
const ALMOST = 1e-9;

interface Activity extends Omit<WeekItem, 'why'> {
  /** Of a drill. */
  readonly ground: PuttingDrill['ground'];
  readonly strokes: number;
  /** Settles equal choices. */
  readonly draw: number;
}

/** Is this drill for this ground, by what it says itself? */
export const suitsGround = ({ ground }: Pick<PuttingDrill, 'ground'>, kind: GroundKind): boolean =>
  ground === 'both' || ground === kind;

/** Drills that train the same error on the same ground, in no more than so many minutes. */
export const drillsInstead = (
  drills: readonly PuttingDrill[],
  {
    trains,
    ground,
    minutes,
  }: { readonly trains: Trained; readonly ground: GroundKind; readonly minutes: number },
): PuttingDrill[] =>
  drills.filter((drill) => drill.trains === trains && suitsGround(drill, ground) && drill.minutes <= minutes);

function activitiesOf({ drills, reading, seed }: WeekQuestion): Activity[] {
  const random = seededRandom(seed);
  return [
    ...drills.map(
      (drill): Activity => ({
        kind: 'drill',
        activity: drill.id,
        trains: drill.trains,
        minutes: drill.minutes,
        ground: drill.ground,
        strokes: strokesOf(drill),
        draw: random(),
      }),
    ),
    ...reading.map(
      ({ id, trains, minutes }): Activity => ({
        kind: 'reading',
        activity: id,
        trains,
        minutes,
        ground: 'both',
        strokes: 0,
        draw: random(),
      }),
    ),
  ];
}

/** Minutes given to each error so far; a drill that trains all three counts a third for each. */
class Given {
  readonly #minutes: Record<WeekError, number> = { line: 0, pace: 0, read: 0 };
  readonly #times = new Map<string, number>();

  add({ activity, trains, minutes }: Pick<WeekItem, 'activity' | 'trains' | 'minutes'>): void {
    this.#times.set(activity, this.timesOf(activity) + 1);
    for (const error of WEEK_ERRORS)
      this.#minutes[error] +=
        trains === error ? minutes : trains === 'mixed' ? minutes / WEEK_ERRORS.length : 0;
  }
  minutesOf(error: WeekError): number {
    return this.#minutes[error];
  }
  timesOf(activity: string): number {
    return this.#times.get(activity) ?? 0;
  }
}

/** Minutes for each error in these sessions; a drill that trains all three counts a third for each. */
export function minutesByError(
  sessions: readonly { readonly items: readonly WeekItem[] }[],
): Record<WeekError, number> {
  const given = new Given();
  for (const { items } of sessions) for (const item of items) given.add(item);
  return { line: given.minutesOf('line'), pace: given.minutesOf('pace'), read: given.minutesOf('read') };
}

const checkSessions = (sessions: readonly WeekSession[]): void => {
  if (sessions.length === 0) throw new RangeError('Got no sessions; expected one or more.');
  for (const { day, minutes } of sessions) {
    if (!(Number.isInteger(day) && day >= 0 && day <= 6))
      throw new RangeError(`Got a session on day ${day}; expected a whole number from 0 to 6.`);
    if (!(minutes >= SESSION_MINUTES.min && minutes <= SESSION_MINUTES.max))
      throw new RangeError(
        `Got a session of ${minutes} minutes; expected ${SESSION_MINUTES.min} to ${SESSION_MINUTES.max}.`,
      );
  }
};

/**
 * A plan for the week.
 * @throws RangeError for sessions outside the week or of a length nobody practises
 */
export function planWeek(question: WeekQuestion): WeekPlan {
  const { costs, sessions, kept = new Map(), choosePace = false } = question;
  checkSessions(sessions);
  const shares = timeShares(costs);
  const worth = new Map(costs.map(({ error, saved }) => [error, saved.value]));
  const worthOf = (error: WeekError): number => worth.get(error) ?? 0;
  const activities = activitiesOf(question);
  const given = new Given();
  for (const items of kept.values()) for (const item of items) given.add(item);
  const all = sessions.reduce((sum, { minutes }) => sum + minutes, 0);

  const whyOf = (trains: WeekItem['trains']): ItemReason => {
    if (trains === 'mixed') return 'all';
    if (trains === 'choice') return 'choice';
    if (trains === shares[0].error) return 'dearest';
    return shares[0].together.includes(trains) ? 'together' : 'next';
  };
  /** No cheaper error may get ahead of a dearer one. */
  const keepsOrder = (error: WeekError, minutes: number): boolean =>
    WEEK_ERRORS.every(
      (other) =>
        worthOf(other) <= worthOf(error) ||
        given.minutesOf(error) + minutes <= given.minutesOf(other) + ALMOST,
    );
  const leastDone = (one: Activity, other: Activity): number =>
    given.timesOf(one.activity) - given.timesOf(other.activity) || one.draw - other.draw;

  const fill = ({ ground, minutes }: WeekSession, items: WeekItem[]): void => {
    let left = minutes - items.reduce((sum, item) => sum + item.minutes, 0);
    for (;;) {
      const sets = items.filter(({ kind }) => kind === 'reading').length;
      const possible = activities
        .filter(
          (one) =>
            one.minutes <= left &&
            !items.some(({ activity }) => activity === one.activity) &&
            suitsGround(one, ground) &&
            (one.kind === 'drill' || sets < READING_AT_MOST[ground]),
        )
        .sort(leastDone);
      const behind = shares
        .filter(({ share }) => share > 0)
        .map(({ error, share }) => ({ error, by: share * all - given.minutesOf(error) }))
        .sort((one, other) => other.by - one.by);
      const next =
        behind
          .map(({ error }) => possible.find((one) => one.trains === error && keepsOrder(error, one.minutes)))
          .find((one) => one !== undefined) ?? possible.find(({ trains }) => trains === 'mixed');
      if (next === undefined) return;
      const { kind, activity, trains } = next;
      items.push({ kind, activity, trains, minutes: next.minutes, why: whyOf(trains) });
      given.add(next);
      left -= next.minutes;
    }
  };

  // Choosing paces is knowledge, not a stroke: one set, in the longest session that is not kept.
  const choice = choosePace ? activities.find(({ trains }) => trains === 'choice') : undefined;
  const longest = sessions.reduce(
    (best, { minutes }, i) => (!kept.has(i) && (best < 0 || minutes > sessions[best].minutes) ? i : best),
    -1,
  );
  const chosen = [...kept.values()].some((items) =>
    items.some(({ trains }: WeekItem) => trains === 'choice'),
  );
  const filled = sessions.map((session, i): readonly WeekItem[] => {
    const stays = kept.get(i);
    if (stays !== undefined) return stays;
    const items: WeekItem[] = [];
    if (choice === undefined || chosen || i !== longest || 2 * choice.minutes > session.minutes) {
      fill(session, items);
      return items;
    }
    fill({ ...session, minutes: session.minutes - choice.minutes }, items);
    const { kind, activity, trains, minutes } = choice;
    items.push({ kind, activity, trains, minutes, why: 'choice' });
    return items;
  });
  return withTest(
    sessions.map((session, i) => ({ ...session, items: filled[i] })),
    shares,
    activities,
  );
}

/**
 * The test: of the planned drills for the dearest error one of the first day, before practice tells; of those the one with most strokes.
 * It is done first in its session.
 */
function withTest(
  sessions: readonly (WeekSession & { readonly items: readonly WeekItem[] })[],
  shares: readonly TimeShare[],
  activities: readonly Activity[],
): WeekPlan {
  const rankOf = ({ trains }: WeekItem): number => {
    const at = shares.findIndex(({ error }) => error === trains);
    return at < 0 ? shares.length : at;
  };
  const strokes = (item: WeekItem): number =>
    activities.find(({ activity }) => activity === item.activity)?.strokes ?? 0;
  const [best] = sessions
    .flatMap(({ items, day }, session) => items.map((item) => ({ item, day, session })))
    .filter(({ item }) => item.kind === 'drill')
    .sort(
      (one, other) =>
        rankOf(one.item) - rankOf(other.item) ||
        one.day - other.day ||
        strokes(other.item) - strokes(one.item),
    );
  if (best === undefined) return { shares, sessions, test: undefined };
  return {
    shares,
    sessions: sessions.map((session, i) =>
      i === best.session
        ? { ...session, items: [best.item, ...session.items.filter((item) => item !== best.item)] }
        : session,
    ),
    test: { session: best.session, item: 0, againOn: best.day + TEST_AGAIN },
  };
}
