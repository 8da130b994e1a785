/**
 * Progress corrected for difficulty, by simulated players over two months: one who does not change is rarely called better whatever
 * the questions do, one who changes is found, and levels come out as they were put in.
 */
import { describe, expect, it } from 'vitest';
import { READ_DRILLS } from '../../../drills/index.ts';
import { seededRandom } from '../../../sim/random.ts';
import { FEWEST_READS, type ReadingProgress, readingProgress } from '../../../sim/training/progress.ts';
import type { Question } from '../../../sim/training/putt-question.ts';
import { makeReadSet } from '../../../sim/training/question.ts';
import type { DatedRead } from '../../../sim/training/reader-model.ts';
import { aimOf, type Eye, practise } from '../../support/learners.ts';
import { normals } from '../../support/normals.ts';
import { sized } from '../../support/size.ts';

const putts = (ids: readonly string[]): Question[] =>
  READ_DRILLS.filter(({ id }) => ids.includes(id)).flatMap((drill) => makeReadSet(drill, 'progress', 60));
const HARD = putts(['long-lag', 'up-and-down-pairs', 'die-and-firm']);
const EASY = putts(['short-testers', 'up-and-down-pairs', 'pin-high-sidehill']);

interface Months {
  readonly before: readonly Question[];
  readonly after: readonly Question[];
  readonly reads: number;
  readonly eyes: readonly [Eye, Eye];
  readonly daySd?: number;
}

/** Verdicts of many pairs of months, drawn at random. */
const judge = (
  { before, after, reads, eyes, daySd = 0 }: Months,
  tries: number,
  seed: string,
): ReadingProgress[] => {
  const random = seededRandom(seed);
  const normal = normals(seed);
  /** Some five reads a day, days differing by `daySd`. */
  const month = (from: readonly Question[], eye: Eye, name: string): DatedRead[] => {
    const ofDay = Array.from({ length: Math.max(4, reads / 5) }, () => daySd * normal());
    return Array.from({ length: reads }, () => {
      const question = from[Math.floor(random() * from.length)];
      const day = Math.floor(random() * ofDay.length);
      const aim = aimOf(question, eye, normal) + ofDay[day] * question.trueAim;
      return { question, aim, day: `${name} ${day}` };
    });
  };
  return Array.from({ length: tries }, () =>
    readingProgress([month(before, eyes[0], 'before'), month(after, eyes[1], 'after')]),
  );
};
const share = (found: readonly ReadingProgress[], verdict: string): number =>
  found.filter(({ change }) => change?.verdict === verdict).length / found.length;
const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

const steady =
  (spread: number, bias = 0): Eye =>
  (_question, normal) =>
    bias + spread * normal();
const EYES: readonly (readonly [string, Eye])[] = [
  ['as good as the tour', steady(0.3)],
  ['averaging 90 and seeing too little', steady(0.55, -0.2)],
  [
    'that sees long putts a third too small',
    ({ length }, normal) => (length > 6 ? -0.33 : 0) + 0.3 * normal(),
  ],
  ['with a weak side', ({ direction }, normal) => (direction === 'rightToLeft' ? 0.5 : 0.25) * normal()],
  [
    'that is worse the more a putt breaks',
    ({ trueAim }, normal) => (0.2 + 0.25 * Math.abs(trueAim)) * normal(),
  ],
];
const TRIES = sized(120, 400);
/**
 * Most of so many months that may be called better, or worse, where nothing changed: intervals of 95% leave 2.5% on either side, and
 * counting so many adds 3.2 standard errors: 5% of 400.
 */
const mostWrong = (tries: number): number => 0.025 + 3.2 * Math.sqrt((0.025 * 0.975) / tries);

describe('a player who does not change', () => {
  describe.each(EYES)('with an eye %s', (name, eye) => {
    it.each([
      ['easier', HARD, EASY, 20],
      ['easier', HARD, EASY, 60],
      ['harder', EASY, HARD, 60],
    ] as const)(
      'is called better at most 5 per cent of the time on %s questions (%#)',
      (what, before, after, reads) => {
        const found = judge({ before, after, reads, eyes: [eye, eye] }, TRIES, `${name} ${what} ${reads}`);
        // A 95% interval says "better" 2.5% of the time by itself.
        expect(share(found, 'better')).toBeLessThanOrEqual(mostWrong(TRIES));
        expect(share(found, 'worse')).toBeLessThanOrEqual(mostWrong(TRIES));
        // There was an answer to be right about: always with some twelve days a month, mostly with four, one of which may hold most reads.
        expect(found.filter(({ change }) => change !== undefined).length / TRIES).toBeGreaterThanOrEqual(
          reads === 20 ? 0.9 : 1,
        );
      },
    );
  });

  it.each([0.1, 0.2])('is called better at most 5 per cent of the time when days differ by %d', (daySd) => {
    const eye = steady(0.3, -0.2);
    const found = judge(
      { before: HARD, after: EASY, reads: 60, eyes: [eye, eye], daySd },
      TRIES,
      `days ${daySd}`,
    );
    expect(share(found, 'better')).toBeLessThanOrEqual(mostWrong(TRIES));
    expect(share(found, 'worse')).toBeLessThanOrEqual(mostWrong(TRIES));
    expect(found.every(({ change }) => change !== undefined)).toBe(true);
  });

  it('would be called better more often by the plain means', () => {
    // Long putts are misread most, and there are none in the second month.
    const eye: Eye = ({ length }, normal) => (length > 6 ? -0.33 : 0) + 0.3 * normal();
    const long = putts(['long-lag']);
    const found = judge(
      { before: [...long, ...EASY.slice(0, 60)], after: EASY, reads: 60, eyes: [eye, eye] },
      100,
      'plain',
    );
    expect(mean(found.map(({ change }) => change?.plain ?? 0))).toBeLessThan(-0.02);
    expect(mean(found.map(({ change }) => change?.fromPutts ?? 0))).toBeLessThan(-0.015);
    expect(share(found, 'better')).toBeLessThanOrEqual(0.08);
  });

  it('is not called better by the adaptive sets that follow him', () => {
    const RUNS = sized(8, 20);
    let better = 0;
    for (let run = 0; run < RUNS; run++) {
      const reads = practise(steady(0.4), 80, `followed ${run}`).map((read, i) => ({
        ...read,
        day: `${Math.floor(i / 8)}`,
      }));
      if (readingProgress([reads.slice(0, 40), reads.slice(40)]).change?.verdict === 'better') better += 1;
    }
    // 2.5% of 20 is a half; three or more would happen to a good test one time in seventy, and two or more of eight one in sixty.
    expect(better).toBeLessThan(sized(2, 3));
  });
});

describe('a player who changes', () => {
  it.each([
    ['a spread of 40% becomes 25%, on harder questions', EASY, HARD, steady(0.4), steady(0.25)],
    ['a spread of 40% becomes 25%, on easier questions', HARD, EASY, steady(0.4), steady(0.25)],
    ['a bias of -40% goes', EASY, EASY, steady(0.25, -0.4), steady(0.25)],
  ] as const)('is found when %s', (name, before, after, from, to) => {
    const found = judge({ before, after, reads: 100, eyes: [from, to] }, 100, name);
    expect(share(found, 'better')).toBeGreaterThan(0.8);
    expect(share(found, 'worse')).toBe(0);
  });

  it('is called worse as readily', () => {
    const found = judge(
      { before: HARD, after: EASY, reads: 100, eyes: [steady(0.25), steady(0.4)] },
      100,
      'worse',
    );
    // 80% measured of 100 pairs, five reads a day; margins that allow for days find a little less than those that took reads for
    // independent. Counting error 4 points: two and a half of them.
    expect(share(found, 'worse')).toBeGreaterThan(0.7);
  });
});

describe('the levels of a period', () => {
  it('are the bias and spread put in, and their intervals hold them', () => {
    const count = sized(80, 200);
    const found = judge(
      { before: HARD, after: EASY, reads: 60, eyes: [steady(0.3, -0.2), steady(0.3, -0.2)] },
      count,
      'levels',
    );
    for (const period of [0, 1]) {
      const of = (what: 'bias' | 'spread'): { value: number; low: number; high: number }[] =>
        found.flatMap(({ periods }) => periods[period][what] ?? []);
      const held = (what: 'bias' | 'spread', truth: number): number =>
        mean(of(what).map(({ low, high }) => (low <= truth && truth <= high ? 1 : 0)));
      expect(of('bias')).toHaveLength(count);
      expect(Math.abs(mean(of('bias').map(({ value }) => value)) + 0.2)).toBeLessThan(0.02);
      // The hand's half inch is in it: at 8 in of break a share of 6%, and the root of 0.3^2 + 0.06^2 is 0.306.
      expect(Math.abs(mean(of('spread').map(({ value }) => value)) - 0.306)).toBeLessThan(0.03);
      // Intervals of 95%, 3.3 standard errors of counting so many (5 points of 200); short tests tilt the hand's part by two points.
      const least = 0.95 - 3.3 * Math.sqrt((0.95 * 0.05) / count);
      expect(held('bias', -0.2)).toBeGreaterThan(least);
      expect(held('spread', 0.306)).toBeGreaterThan(least - 0.02);
    }
  });

  it('are none for too few reads, nor is there a change', () => {
    const few = HARD.slice(0, FEWEST_READS - 1).map((question, index) => ({
      question,
      aim: question.trueAim,
      day: `${index}`,
    }));
    const enough = EASY.slice(0, 40).map((question, index) => ({
      question,
      aim: question.trueAim * (1 + (index % 5) / 10),
      day: `${index}`,
    }));
    const { periods, change } = readingProgress([few, enough]);
    expect(periods[0]).toMatchObject({ bias: undefined, spread: undefined, error: undefined });
    expect(periods[1].bias).toBeDefined();
    expect(change).toBeUndefined();
    expect(readingProgress([[], []]).change).toBeUndefined();
    expect(readingProgress([]).periods).toEqual([]);
  });

  it('cannot be told apart from the putts where every putt of one month differs from all of the other’s in one way', () => {
    const normal = normals('confounded');
    const all = EASY.filter(({ direction }) => direction !== 'straight');
    const side = (direction: string): DatedRead[] =>
      all
        .filter((question) => question.direction === direction)
        .slice(0, 30)
        .map((question, index) => ({
          question,
          aim: aimOf(question, steady(0.3), normal),
          day: `${direction} ${index}`,
        }));
    expect(readingProgress([side('leftToRight'), side('rightToLeft')]).change).toBeUndefined();
  });
});
