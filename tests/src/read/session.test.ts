/** The order of a set and that nothing committed is lost, with a world of the test's own. */
import { describe, expect, it } from 'vitest';
import { READ_DRILLS } from '../../../drills/index.ts';
import {
  chooseNext,
  makePaceSet,
  makeReadSet,
  makeSlopeSet,
  type Question,
  type ReadDrill,
} from '../../../sim/index.ts';
import { createSession, type Session, type World } from '../../../src/screens/read/session.ts';
import { ADAPTIVE_SET, type FixedOffer, PACE_SET, SLOPE_SET } from '../../../src/state/readOffers.ts';
import type { ReadStore } from '../../../src/store/readSets.ts';
import { answeredOf, type KeptSet } from '../../../src/store/schema.ts';
import { memoryReadStore } from '../../support/memoryRecords.ts';

const player = { lineSd: 0.02, paceSd: 0.08, paceBias: 0, slopeSd: 0, speedSd: 0, readBias: 0 };
const worldWith = (
  store: ReadStore,
  changes: { readonly [Name in keyof World]?: World[Name] } = {},
): World => {
  let serial = 0;
  return {
    openStore: async () => ({ store, problem: undefined }),
    now: () => 1000 + serial,
    newId: () => `set-id-${++serial}`,
    newSeed: () => 'seed',
    player: () => player,
    makeSet: async (offer, seed) => drawn(offer, seed),
    chooseNext: async ({ adaptive, others }, seed) => chooseNext(adaptive, { earlier: others }, seed),
    puttsOf: async () => ({ die: 1.7, firm: 1.65 }),
    costOf: async () => ({ holedAtAim: 0.2, holedAtTrue: 0.3 }),
    ...changes,
  };
};
const drawn = (offer: FixedOffer, seed: string): Question[] => {
  if (offer.id === PACE_SET.id) return makePaceSet(seed);
  return offer.id === SLOPE_SET.id ? makeSlopeSet(seed) : makeReadSet(offer as ReadDrill, seed);
};
const aimsOf = (set: KeptSet) => answeredOf(set, 'aim');
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
      .poll(async () => aimsOf((await store.list()).records[0]).map(({ holedAtTrue }) => holedAtTrue))
      .toEqual(Array(10).fill(0.3));
    const [kept] = (await store.list()).records;
    expect(session.saved.value).toBe(true);
    expect(aimsOf(kept).map(({ aim }) => aim)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10].map((n) => 0.01 * n));
  });

  it('has an answer on the device as soon as it is committed, before the next putt', async () => {
    const store = memoryReadStore();
    const session = createSession(worldWith(store));
    await session.open();
    await session.start(READ_DRILLS[1]);
    session.aim.value = 0.1;
    session.commit();
    await settle();
    expect((await store.list()).records[0].answers).toHaveLength(1);
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
    expect((await store.list()).records[0].answers).toHaveLength(1);
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
    expect(aimsOf((await store.list()).records[0]).map(({ aim }) => aim)).toEqual([0.1, 0.2]);
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
    expect(aimsOf((await store.list()).records[0])[0].holedAtTrue).toBeUndefined();
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
    expect((await store.list()).records).toEqual([]);
  });

  it('says so when no putts can be drawn, and starts the next set all the same', async () => {
    let fail = true;
    const session = createSession(
      worldWith(memoryReadStore(), {
        makeSet: async (offer, seed) => {
          if (fail) throw new RangeError('none');
          return drawn(offer, seed);
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

describe('an adaptive set', () => {
  it('grows question by question to ten, each chosen after the answer before it', async () => {
    const store = memoryReadStore();
    const session = createSession(worldWith(store));
    await session.open();
    await session.start(ADAPTIVE_SET);
    for (let number = 1; number <= 10; number++) {
      await expect.poll(() => session.stage.value).toMatchObject({ kind: 'asking', question: { number } });
      const now = session.stage.value;
      if (now.kind !== 'asking') throw new Error('nothing was asked');
      expect(now.set.size).toBe(10);
      expect(now.set.questions).toHaveLength(number);
      answerOne(session, 0.9 * now.question.trueAim);
    }
    expect(session.stage.value.kind).toBe('summary');
    await settle();
    const [kept] = (await store.list()).records;
    expect(kept.questions.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    expect(aimsOf(kept).every(({ aim, question }) => aim === 0.9 * question.trueAim)).toBe(true);
  });

  it('asks after a reload the very putt that was waiting', async () => {
    const store = memoryReadStore();
    const first = createSession(worldWith(store));
    await first.open();
    await first.start(ADAPTIVE_SET);
    for (const aim of [0.1, -0.2, 0.3]) {
      answerOne(first, aim);
      await settle();
    }
    const waiting = first.stage.value;
    if (waiting.kind !== 'asking') throw new Error('the fourth putt was not asked');
    const second = createSession(worldWith(store));
    await second.open();
    second.resume(second.sets.value[0]);
    await expect
      .poll(() => second.stage.value)
      .toMatchObject({ kind: 'asking', question: { ...waiting.question, number: 4 } });
  });

  it('says so when no putt can be drawn, keeps what was answered, and goes on when asked again', async () => {
    const store = memoryReadStore();
    let fail = false;
    const world = worldWith(store);
    const session = createSession({
      ...world,
      chooseNext: (seen, seed) =>
        fail ? Promise.reject(new RangeError('none')) : world.chooseNext(seen, seed),
    });
    await session.open();
    await session.start(ADAPTIVE_SET);
    fail = true;
    answerOne(session, 0.1);
    await expect.poll(() => session.makingProblem.value).toMatch(/^No putt could be drawn/);
    fail = false;
    session.next();
    await expect.poll(() => session.stage.value).toMatchObject({ kind: 'asking', question: { number: 2 } });
    expect((await store.list()).records[0].answers).toHaveLength(1);
  });

  it('takes one answer to a putt while the next is drawn', async () => {
    const store = memoryReadStore();
    const session = createSession(worldWith(store));
    await session.open();
    session.feedback.value = 'end';
    await session.start(ADAPTIVE_SET);
    session.aim.value = 0.1;
    session.commit();
    session.commit();
    await settle();
    expect((await store.list()).records[0].answers).toHaveLength(1);
    expect(session.stage.value).toMatchObject({ kind: 'asking', question: { number: 2 } });
  });
});

describe('the truth at the end of the set', () => {
  it('is not shown before the last answer, then putt by putt, then summed up', async () => {
    const session = createSession(worldWith(memoryReadStore()));
    await session.open();
    session.feedback.value = 'end';
    await session.start(READ_DRILLS[0]);
    for (let number = 1; number <= 10; number++) {
      expect(session.stage.value).toMatchObject({ kind: 'asking', question: { number } });
      session.aim.value = 0.01 * number;
      session.commit();
      await settle();
    }
    for (let number = 1; number <= 10; number++) {
      expect(session.stage.value).toMatchObject({
        kind: 'revealed',
        question: { number },
        revealed: { kind: 'aim', aim: 0.01 * number },
      });
      session.next();
    }
    expect(session.stage.value.kind).toBe('summary');
  });
});

describe('die or firm', () => {
  it('keeps each choice at once and what both paces take when it is known', async () => {
    const store = memoryReadStore();
    let tell = (): void => {};
    const known = new Promise<{ die: number; firm: number }>((resolve) => {
      tell = () => resolve({ die: 1.9, firm: 1.85 });
    });
    const session = createSession(worldWith(store, { puttsOf: () => known }));
    await session.open();
    await session.start(PACE_SET);
    session.choose('die');
    await settle();
    expect((await store.list()).records[0]).toMatchObject({
      kind: 'paces',
      answers: [{ kind: 'paces', number: 1, chosen: 'die' }],
    });
    expect(session.stage.value).toMatchObject({
      kind: 'revealed',
      revealed: { kind: 'paces', chosen: 'die' },
    });
    tell();
    await expect
      .poll(async () => answeredOf((await store.list()).records[0], 'paces')[0].putts)
      .toEqual({ die: 1.9, firm: 1.85 });
  });

  it('works out later what a page closed too soon left undone', async () => {
    const store = memoryReadStore();
    const first = createSession(worldWith(store, { puttsOf: () => new Promise(() => {}) }));
    await first.open();
    await first.start(PACE_SET);
    first.choose('firm');
    await settle();
    const second = createSession(worldWith(store));
    await second.open();
    second.look(second.sets.value[0]);
    await expect
      .poll(async () => answeredOf((await store.list()).records[0], 'paces')[0].putts)
      .toEqual({ die: 1.7, firm: 1.65 });
  });
});

describe('what slope', () => {
  it('keeps both slopes and shows the true ones', async () => {
    const store = memoryReadStore();
    const session = createSession(worldWith(store));
    await session.open();
    await session.start(SLOPE_SET);
    const asked = session.stage.value;
    if (asked.kind !== 'asking') throw new Error('nothing was asked');
    session.guess.value = { total: 0.031, along: -0.012 };
    session.estimate();
    await settle();
    expect((await store.list()).records[0].answers).toMatchObject([
      { kind: 'slope', total: 0.031, along: -0.012 },
    ]);
    // On a plane the slope is what it was made with.
    const { ground } = asked.question;
    if (ground.kind !== 'plane') throw new Error('the ground is not even');
    const revealed = session.stage.value.kind === 'revealed' ? session.stage.value.revealed : undefined;
    if (revealed?.kind !== 'slope') throw new Error('no slopes were shown');
    expect(revealed.truth.total).toBeCloseTo(ground.slope, 12);
  });

  it('is not answered by a choice of pace, nor by an aim', async () => {
    const session = createSession(worldWith(memoryReadStore()));
    await session.open();
    await session.start(SLOPE_SET);
    session.choose('die');
    session.commit();
    expect(session.stage.value).toMatchObject({ kind: 'asking', set: { answers: [] } });
  });
});
