/**
 * Rounds, putts and practice on this device. Answers for: every write whole or not at all, and never over what another tab has
 * written meanwhile. Leaves out: shapes (recordSchema.ts), opening (database.ts), what records tell (sim/evidence).
 * A write says what it was made from: when the device holds something else by then, nothing is written and the caller gets
 * 'changedElsewhere', to show what is there and ask again.
 */
import type { PracticeSet, RecordedPutt, RecordedRound } from '../../sim/index.ts';
import type { Database } from './database.ts';
import { mustPass, passAll, passEach } from './gate.ts';
import { listed } from './lists.ts';
import { type AnyMeasured, measuredOf, measurementSchema } from './measurementSchema.ts';
import { practiceSchema, puttSchema, roundSchema } from './recordSchema.ts';
import { same } from './same.ts';
import { TABLES } from './tables.ts';
import type { Work } from './work.ts';

export type Written = 'written' | 'changedElsewhere';

/** One hole as it was on the screen and as it is to be; ids of putts stay with them. */
export interface HoleChange {
  readonly roundId: string;
  readonly hole: number;
  readonly before: readonly RecordedPutt[];
  readonly after: readonly RecordedPutt[];
}

export interface RoundInHand {
  readonly round: RecordedRound;
  /** In order of play: by hole, then stroke. */
  readonly putts: readonly RecordedPutt[];
}

export interface AllRecords {
  /** Newest first. */
  readonly rounds: readonly RecordedRound[];
  readonly putts: readonly RecordedPutt[];
  readonly practice: readonly PracticeSet[];
  /** Newest first. */
  readonly measured: readonly AnyMeasured[];
  /** Records found that could not be read; they stay on the device. */
  readonly unreadable: number;
}

/** How much there is, readable or not: cheap to ask. */
export interface RecordSizes {
  readonly putts: number;
  readonly sets: number;
}

export interface Records {
  /** The round that is open, the newest if there are several; undefined when none is. */
  openRound(): Promise<RoundInHand | undefined>;
  round(id: string): Promise<RoundInHand | undefined>;
  /** Begins a round; 'changedElsewhere' when one is open already. */
  startRound(round: RecordedRound): Promise<Written>;
  /** Replaces a round's own fields; 'changedElsewhere' unless it is as it was in `before`. */
  changeRound(before: RecordedRound, after: RecordedRound): Promise<Written>;
  changeHole(change: HoleChange): Promise<Written>;
  /** A round and all its putts. */
  removeRound(id: string): Promise<void>;
  keepPractice(set: PracticeSet): Promise<void>;
  removePractice(id: string): Promise<void>;
  /** The newest rounds, ended or not, with their putts. */
  recentRounds(limit: number): Promise<readonly RoundInHand[]>;
  /** Newest first. */
  recentPractice(limit: number): Promise<readonly PracticeSet[]>;
  /** What `judgeFound` makes the records of: as fetched, so that whoever watches it is told of changes. */
  found(): Promise<FoundRecords>;
  sizes(): Promise<RecordSizes>;
}

export const inOrderOfPlay = (putts: readonly RecordedPutt[]): RecordedPutt[] =>
  [...putts].sort(TABLES.putts.inOrder);

/** More rounds than anybody plays in a day. */
const ROUNDS_A_DAY = 8;

/** What the review looks at. */
const REVIEWED = ['rounds', 'putts', 'practice', 'measurements'] as const;
/** Not judged yet. */
export type FoundRecords = { readonly [Table in (typeof REVIEWED)[number]]: readonly unknown[] };

/** Records as found, judged. */
export function* judgeFound(found: FoundRecords): Work<AllRecords> {
  const rounds = yield* passEach(roundSchema, found.rounds);
  const putts = yield* passEach(puttSchema, found.putts);
  const practice = yield* passEach(practiceSchema, found.practice);
  const measurements = yield* passEach(measurementSchema, found.measurements);
  return {
    rounds: [...rounds.kept].sort(TABLES.rounds.inOrder),
    putts: putts.kept,
    practice: practice.kept,
    measured: [...measurements.kept].sort(TABLES.measurements.inOrder).map(measuredOf),
    unreadable: [rounds, putts, practice, measurements].reduce(
      (sum, { unreadable }) => sum + unreadable.length,
      0,
    ),
  };
}

export const recordsOf = (database: Database): Records => {
  const { rounds, putts, practice } = database;

  const inHand = async (round: RecordedRound): Promise<RoundInHand> => {
    const { kept } = passAll(puttSchema, await putts.where('roundId').equals(round.id).toArray());
    return { round, putts: inOrderOfPlay(kept) };
  };
  const open = async (): Promise<RecordedRound | undefined> => {
    const found = await rounds.filter(({ endedAt }) => endedAt === undefined).toArray();
    return [...passAll(roundSchema, found).kept].sort(TABLES.rounds.inOrder)[0];
  };

  return {
    openRound: () =>
      database.transaction('r', rounds, putts, async () => {
        const round = await open();
        return round && inHand(round);
      }),
    round: (id) =>
      database.transaction('r', rounds, putts, async () => {
        const [round] = passAll(roundSchema, [await rounds.get(id)]).kept;
        return round && inHand(round);
      }),
    async startRound(round) {
      const good = mustPass(roundSchema, round);
      return database.transaction('rw', rounds, async () => {
        if (await open()) return 'changedElsewhere';
        await rounds.add(good);
        return 'written';
      });
    },
    async changeRound(before, after) {
      const good = mustPass(roundSchema, { ...after, id: before.id });
      return database.transaction('rw', rounds, async () => {
        if (!same(await rounds.get(before.id), before)) return 'changedElsewhere';
        await rounds.put(good);
        return 'written';
      });
    },
    async changeHole({ roundId, hole, before, after }) {
      const good = after.map((putt, index) =>
        mustPass(puttSchema, { ...putt, roundId, hole, stroke: index + 1 }),
      );
      return database.transaction('rw', rounds, putts, async () => {
        const round = await rounds.get(roundId);
        if (round === undefined || hole > round.holes) return 'changedElsewhere';
        const found = (await putts.where('roundId').equals(roundId).toArray()).filter(
          (putt) => putt.hole === hole,
        );
        if (!same(inOrderOfPlay(found), inOrderOfPlay(before))) return 'changedElsewhere';
        const stay = new Set(good.map(({ id }) => id));
        await putts.bulkDelete(found.map(({ id }) => id).filter((id) => !stay.has(id)));
        await putts.bulkPut(good);
        return 'written';
      });
    },
    removeRound: (id) =>
      database.transaction('rw', rounds, putts, async () => {
        await putts.where('roundId').equals(id).delete();
        await rounds.delete(id);
      }),
    async keepPractice(set) {
      await practice.put(mustPass(practiceSchema, set));
    },
    removePractice: (id) => practice.delete(id),
    recentRounds: (limit) =>
      database.transaction('r', rounds, putts, async () => {
        // A day may hold more than one round, and days come in order, not rounds of a day: looked up with some to spare.
        const found = await rounds
          .orderBy('day')
          .reverse()
          .limit(limit + ROUNDS_A_DAY)
          .toArray();
        const newest = [...passAll(roundSchema, found).kept].sort(TABLES.rounds.inOrder).slice(0, limit);
        return Promise.all(newest.map(inHand));
      }),
    async recentPractice(limit) {
      return (await listed(database, 'practice')).records.slice(0, limit);
    },
    sizes: () =>
      database.transaction('r', putts, practice, async () => ({
        putts: await putts.count(),
        sets: await practice.count(),
      })),
    async found() {
      const tables = REVIEWED.map((name) => database.table<unknown>(name));
      const found = await database.transaction('r', tables, () =>
        Promise.all(tables.map((table) => table.toArray())),
      );
      const [rounds, putts, practice, measurements] = found;
      return { rounds, putts, practice, measurements };
    },
  };
};
