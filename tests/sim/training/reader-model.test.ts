/** The model of the eye: against Bayes' rule for one read, and players of known bias and spread. */
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../sim/random.ts';
import { kindsOf, PUTT_READ_KINDS } from '../../../sim/training/kinds.ts';
import { drawReader, fitReader, type SeenRead } from '../../../sim/training/reader-model.ts';
import { type Eye, practise } from '../../support/learners.ts';
import { sampleQuestion } from '../../support/sampleQuestion.ts';

const effectOf = (reads: readonly SeenRead[], kind: (typeof PUTT_READ_KINDS)[number]): number =>
  fitReader(reads).mean[1 + PUTT_READ_KINDS.indexOf(kind)];

describe('what is known of an eye', () => {
  it('after one read is Bayes’ rule: the bias of that putt shrunk by its prior’s share of the variance', () => {
    const question = sampleQuestion();
    const model = fitReader([{ question, aim: 0.8 * question.trueAim }]);
    const kinds = kindsOf(question);
    const predicted = kinds.reduce(
      (sum, kind) => sum + model.mean[1 + PUTT_READ_KINDS.indexOf(kind)],
      model.mean[0],
    );
    // One normal observation with a normal prior: r V/(V + variance of r); priors 0.3 for the bias and 0.15 for each of six effects.
    const prior = 0.3 ** 2 + kinds.length * 0.15 ** 2;
    const weight = 0.3 ** 2 / (0.3 ** 2 + 0.053975 ** 2);
    expect(kinds).toHaveLength(6);
    expect(predicted).toBeCloseTo((-0.2 * prior) / (prior + model.spread.scale / weight), 12);
  });

  it('finds the bias, the spread and the weak side of a player', () => {
    const eye: Eye = ({ direction }, normal) => (direction === 'rightToLeft' ? -0.4 : -0.1) + 0.3 * normal();
    const reads = practise(eye, 150, 'weak side');
    const { mean, spread } = fitReader(reads);
    const side = (kind: 'leftToRight' | 'rightToLeft'): number => mean[0] + effectOf(reads, kind);
    // Some 75 reads of each side: standard error 0.035, and the priors pull both a little towards the middle.
    expect(Math.abs(side('rightToLeft') + 0.4)).toBeLessThan(0.12);
    expect(Math.abs(side('leftToRight') + 0.1)).toBeLessThan(0.12);
    expect(Math.abs(Math.sqrt(spread.scale) - 0.3)).toBeLessThan(0.06);
  });

  it('is drawn more narrowly the more was seen', () => {
    const scatter = (reads: readonly SeenRead[]): number => {
      const random = seededRandom('draws');
      const model = fitReader(reads);
      const kinds = kindsOf(sampleQuestion());
      const errors = Array.from({ length: 300 }, () => Math.log(drawReader(model, random).errorOf(kinds)));
      const mean = errors.reduce((sum, error) => sum + error, 0) / errors.length;
      return Math.sqrt(errors.reduce((sum, error) => sum + (error - mean) ** 2, 0) / errors.length);
    };
    const reads = practise((_question, normal) => 0.3 * normal(), 120, 'narrow');
    const [none, some, many] = [[], reads.slice(0, 15), reads].map(scatter);
    expect(some).toBeLessThan(none);
    expect(many).toBeLessThan(0.7 * some);
  });

  it('is not turned over by a slip of the finger', () => {
    const reads = practise((_question, normal) => 0.2 * normal(), 60, 'slip');
    const slip = { question: sampleQuestion({ trueAim: 0.1 }), aim: 9 };
    expect(Math.abs(fitReader([...reads, slip]).mean[0] - fitReader(reads).mean[0])).toBeLessThan(0.05);
  });
});
