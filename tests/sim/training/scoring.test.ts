/** One read judged, and a set summed up. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scoreAim } from '../../../sim/training/scoring.ts';
import { summarizeReads } from '../../../sim/training/summary.ts';
import { sampleQuestion } from '../../support/sampleQuestion.ts';

const INCH = 0.0254;
const aims = fc.double({ min: -2, max: 2, noNaN: true });

describe('scoring one aim', () => {
  it.each([
    ['three inches short of a foot of break is too little, a quarter', 12, 9, 'tooLittle', -3, -0.25],
    ['three inches over is too much', 12, 15, 'tooMuch', 3, 0.25],
    ['the same holds on the right', -12, -9, 'tooLittle', -3, -0.25],
    ['the other side of the hole is the wrong side', 6, -6, 'wrongSide', -12, -2],
    ['within half an inch is right', -12, -12.4, 'right', 0.4, 0.4 / 12],
  ] as const)('%s', (_name, truth, aim, verdict, error, share) => {
    const score = scoreAim(truth * INCH, aim * INCH);
    expect(score.verdict).toBe(verdict);
    expect(score.error).toBeCloseTo(error * INCH, 12);
    expect(score.share).toBeCloseTo(share, 12);
  });

  it('gives no share where there is less than an inch of break', () => {
    expect(scoreAim(0.9 * INCH, 3 * INCH).share).toBeUndefined();
    expect(scoreAim(0, 3 * INCH).verdict).toBe('tooMuch');
  });

  it('judges a mirrored putt the same', () => {
    fc.assert(
      fc.property(aims, aims, (trueAim, aim) => {
        if (trueAim === 0) return;
        expect(scoreAim(-trueAim, -aim)).toEqual(scoreAim(trueAim, aim));
      }),
      { seed: 22 },
    );
  });

  it('calls a read too little only when the aim is on the low side of the truth', () => {
    fc.assert(
      fc.property(aims, aims, (trueAim, aim) => {
        if (scoreAim(trueAim, aim).verdict === 'tooLittle')
          expect(Math.abs(aim)).toBeLessThan(Math.abs(trueAim));
      }),
      { seed: 23 },
    );
  });
});

describe('summing up', () => {
  it('has nothing to say of no answers', () => {
    expect(summarizeReads([])).toBeUndefined();
  });

  it('keeps a kind with one read, without a margin, and leaves out kinds without any', () => {
    const answers = [-0.3, -0.25, -0.35, -0.2, -0.28].map((trueAim) => ({
      day: 'monday',
      question: sampleQuestion({ trueAim, direction: 'rightToLeft' }),
      aim: 0.8 * trueAim,
    }));
    const summary = summarizeReads([
      ...answers,
      { day: 'monday', question: sampleQuestion({ climb: 'up', length: 9 }), aim: 0.36 },
    ]);
    const kinds = new Map(summary?.kinds.map((kind) => [kind.kind, kind]));
    expect([...kinds.keys()]).toEqual([
      'all',
      'leftToRight',
      'rightToLeft',
      'up',
      'level',
      'steep',
      'middle',
      'long',
      'slow',
      'firm',
    ]);
    expect(kinds.get('rightToLeft')?.bias?.value).toBeCloseTo(-0.2, 12);
    expect(kinds.get('leftToRight')).toMatchObject({
      count: 1,
      bias: { verdict: 'tooFew', high: Number.POSITIVE_INFINITY },
    });
  });

  it('averages the cost over the answers whose cost is known', () => {
    const summary = summarizeReads([
      { day: 'monday', question: sampleQuestion({}), aim: 0.3, holedAtAim: 0.4, holedAtTrue: 0.5 },
      { day: 'monday', question: sampleQuestion({}), aim: 0.36, holedAtAim: 0.2, holedAtTrue: 0.5 },
      { day: 'monday', question: sampleQuestion({}), aim: 0.24 },
    ]);
    expect(summary?.meanCost).toBeCloseTo(0.2, 12);
    // 0, 6 and 6 cm off.
    expect(summary?.meanError).toBeCloseTo(0.04, 12);
  });
});
