/** Which reads belong to which period, and the sentences about the change between the last two. */
import { describe, expect, it } from 'vitest';
import { PERIOD_DAYS, progressOf } from '../../../src/screens/read/periods.ts';
import {
  progressDetail,
  progressHeadline,
  progressRow,
  spanName,
} from '../../../src/screens/read/progressWords.ts';
import { answer, set } from '../../support/sampleSet.ts';

const DAY = 86_400_000;
const NOW = 400 * DAY;
const readAt = (id: string, daysAgo: number) =>
  set({ id, answers: [{ ...answer(1), answeredAt: NOW - daysAgo * DAY }] });

describe('periods', () => {
  it('are thirty days each, the newest last, none with the other’s reads', () => {
    const { spans, progress, count } = progressOf(
      [
        readAt('set-now', 0),
        readAt('set-29', 29.9),
        readAt('set-30', 30),
        readAt('set-59', 59.9),
        readAt('set-179', 179),
      ],
      NOW,
    );
    expect(PERIOD_DAYS).toBe(30);
    expect(spans.at(-1)).toEqual({ from: 30, to: 0 });
    expect(progress.periods.map((period) => period.count)).toEqual([1, 0, 0, 0, 2, 2]);
    expect(count).toBe(5);
  });

  it('leave out what is older than all of them, and take a clock put back for today', () => {
    const { progress } = progressOf([readAt('set-old', 181), readAt('set-late', -3)], NOW);
    expect(progress.periods.map((period) => period.count)).toEqual([0, 0, 0, 0, 0, 1]);
  });

  it('count aims alone: a slope is no read of the break', () => {
    const slopes = set({
      id: 'set-slopes',
      kind: 'slope',
      answers: [{ kind: 'slope', number: 1, total: 0.02, along: 0.01, answeredAt: NOW }],
    });
    expect(progressOf([slopes], NOW).count).toBe(0);
  });
});

describe('the answer to "better, or easier questions?"', () => {
  const change = {
    value: -0.04,
    low: -0.09,
    high: 0.01,
    verdict: 'cannotTell',
    plain: -0.1,
    fromPutts: -0.06,
  } as const;

  it('gives the change at one mix of putts with its interval, then the part of the questions', () => {
    expect(progressHeadline(change)).toBe(
      'Better than last month? The reads cannot tell: at one and the same mix of putts your typical error changed by −4.0 points of the break (−9.0 to +1.0).',
    );
    expect(progressDetail(change, 10)).toBe(
      'As the putts were, it changed by −10.0 points, of which −6.0 come from easier questions.',
    );
    expect(progressDetail({ ...change, fromPutts: 0.02 }, 10)).toContain('from harder questions');
    expect(progressDetail({ ...change, fromPutts: 0.001 }, 10)).toContain('about as hard');
    expect(progressHeadline({ ...change, verdict: 'better', high: -0.01 })).toMatch(
      /^Better than last month: /,
    );
  });

  it('says when there is too little to tell', () => {
    expect(progressHeadline(undefined)).toMatch(/Too few reads/);
    expect(progressDetail(undefined, 10)).toContain('10 reads');
  });

  it('has a row for a period without a level', () => {
    const none = {
      count: 3,
      bias: undefined,
      spread: undefined,
      error: undefined,
      plainError: 0.2,
      meanBreak: 0.254,
    };
    expect(progressRow(spanName({ from: 60, to: 30 }), none, 'imperial')).toEqual([
      '30 to 60 days',
      '3',
      'too few',
      'too few',
      'too few',
      '20%',
      '10 in',
    ]);
  });
});
