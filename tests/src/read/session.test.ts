/** The order of a set and that nothing committed is lost, with a world of the test's own. */
import { describe, expect, it } from 'vitest';
import { READ_DRILLS } from '../../../drills/index.ts';
import { makeReadSet } from '../../../sim/index.ts';
import { createSession, type Session, type World } from '../../../src/screens/read/session.ts';
import type { ReadStore } from '../../../src/store/readSets.ts';
import { memoryReadStore } from '../../support/memoryRecords.ts';

const player = { lineSd: 0.02, paceSd: 0.08, readSd: 0, readBias: 0, paceBias: 0 };
const worldWith = (store: ReadStore, changes: Partial<World> = {}): World => {
  let serial = 0;
  return {
    openStore: async () => ({ store, problem: undefined }),
    now: () => 1000 + serial,
    newId: () => `set-id-${++serial}`,
    newSeed: () => 'seed',
    player: () => player,
    makeSet: async (drill, seed) => makeReadSet(drill, seed),
    costOf: async () => ({ holedAtAim: 0.2, holedAtTrue: 0.3 }),
    ...changes,
  };
};
const settle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 20));
const answerOne = (session: Session, aim: number): void => {
  session.aim.value = aim;
  session.commit();
  session.next();
};

describe('a session', () => {
  it('goes from the drill through ten putts to the summary and keeps them with their cost', async () => {
    const store = memoryReadStore();
    const session = createSession(worldWith(store));
    await session.open();
    await session.start(READ_DRILLS[0]);
    for (let number = 1; number <= 10; number++) {
      expect(session.stage.value).toMatchObject({ kind: 'asking', question: { number } });
      expect(session.aim.value).toBe(0);
      answerOne(session, 0.01 * number);
    }
    expect(session.stage.value.kind).toBe('summary');
    await expect
      .poll(async () => (await store.list()).sets[0].answers.map(({ holedAtTrue }) => holedAtTrue))
      .toEqual(Array(10).fill(0.3));
    const [kept] = (await store.list()).sets;
    expect(session.saved.value).toBe(true);
    expect(kept.answers.map(({ aim }) => aim)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10].map((n) => 0.01 * n));
  });

  it('has an answer on the device as soon as it is committed, before the next putt', async () => {
    const store = memoryReadStore();
    const session = createSession(worldWith(store));
    await session.open();
    await session.start(READ_DRILLS[1]);
    session.aim.value = 0.1;
    session.commit();
    await settle();
    expect((await store.list()).sets[0].answers).toHaveLength(1);
  });

  it('resumes with the first unanswered putt of the very same set', async () => {
    const store = memoryReadStore();
    const first = createSession(worldWith(store));
    await first.open();
    await first.start(READ_DRILLS[2]);
    answerOne(first, 0.1);
    answerOne(first, -0.1);
    const asked = first.stage.value;
    await settle();
    const second = createSession(worldWith(store));
    await second.open();
    second.resume(second.sets.value[0]);
    if (asked.kind !== 'asking') throw new Error('the third putt was not asked');
    expect(second.stage.value).toMatchObject({ kind: 'asking', question: asked.question });
  });

  it('keeps an answer made before the records were open', async () => {
    const store = memoryReadStore();
    let letOpen = (): void => {};
    const opened = new Promise<void>((resolve) => {
      letOpen = resolve;
    });
    const session = createSession(
      worldWith(store, { openStore: () => opened.then(() => ({ store, problem: undefined })) }),
    );
    const opening = session.open();
    await session.start(READ_DRILLS[0]);
    session.aim.value = 0.2;
    session.commit();
    letOpen();
    await opening;
    await settle();
    expect((await store.list()).sets[0].answers).toHaveLength(1);
    expect(session.sets.value).toHaveLength(1);
  });

  it('says so when the device refuses, and saves all of it with the next answer', async () => {
    const store = memoryReadStore();
    let refuse = true;
    const stubborn: ReadStore = {
      ...store,
      keep: (set) => (refuse ? Promise.reject(new Error('full')) : store.keep(set)),
    };
    const session = createSession(worldWith(stubborn));
    await session.open();
    await session.start(READ_DRILLS[0]);
    answerOne(session, 0.1);
    await settle();
    expect(session.storageProblem.value).toMatch(/could not be saved/);
    refuse = false;
    answerOne(session, 0.2);
    await settle();
    expect((await store.list()).sets[0].answers.map(({ aim }) => aim)).toEqual([0.1, 0.2]);
    expect(session.storageProblem.value).toBeUndefined();
  });

  it('stands without the cost when it cannot be worked out', async () => {
    const store = memoryReadStore();
    const session = createSession(worldWith(store, { costOf: () => Promise.reject(new Error('no engine')) }));
    await session.open();
    await session.start(READ_DRILLS[0]);
    session.commit();
    await settle();
    expect(session.costProblem.value).toBe(true);
    expect((await store.list()).sets[0].answers[0].holedAtTrue).toBeUndefined();
  });

  it('rolls the true aim into the hole and takes no second answer to a putt', async () => {
    const session = createSession(worldWith(memoryReadStore()));
    await session.open();
    await session.start(READ_DRILLS[0]);
    const asked = session.stage.value;
    if (asked.kind !== 'asking') throw new Error('nothing was asked');
    session.aim.value = asked.question.trueAim;
    session.commit();
    session.commit();
    expect(session.stage.value).toMatchObject({
      kind: 'revealed',
      set: { answers: { length: 1 } },
      revealed: { roll: { status: 'holed' }, score: { verdict: 'right' } },
    });
  });

  it('makes no record of a set left before the first answer', async () => {
    const store = memoryReadStore();
    const session = createSession(worldWith(store));
    await session.open();
    await session.start(READ_DRILLS[0]);
    session.leave();
    await settle();
    expect((await store.list()).sets).toEqual([]);
  });

  it('says so when no putts can be drawn, and starts the next set all the same', async () => {
    let fail = true;
    const session = createSession(
      worldWith(memoryReadStore(), {
        makeSet: async (drill, seed) => {
          if (fail) throw new RangeError('none');
          return makeReadSet(drill, seed);
        },
      }),
    );
    await session.open();
    await session.start(READ_DRILLS[0]);
    expect(session.stage.value.kind).toBe('choosing');
    expect(session.makingProblem.value).toMatch(/^No putts could be drawn for “.+”: try again/);
    fail = false;
    await session.start(READ_DRILLS[0]);
    expect(session.stage.value.kind).toBe('asking');
    expect(session.makingProblem.value).toBeUndefined();
  });

  it('asks nothing of a person who went elsewhere while the putts were drawn', async () => {
    const store = memoryReadStore();
    const earlier = createSession(worldWith(store));
    await earlier.open();
    await earlier.start(READ_DRILLS[0]);
    answerOne(earlier, 0.1);
    await settle();
    const session = createSession(worldWith(store));
    await session.open();
    const drawing = session.start(READ_DRILLS[1]);
    session.look(session.sets.value[0]);
    await drawing;
    expect(session.stage.value.kind).toBe('summary');
  });
});
