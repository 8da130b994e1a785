/** Sentences and their taking over: what is said must hold what was measured, wide when it is wide. */
import { beforeEach, describe, expect, it } from 'vitest';
import {
  degreesToRadians,
  feetToMetres,
  type MeasuredGreen,
  type MeasuredPlayer,
  measureGreenSpeed,
  PRESETS,
  paceControl,
  slopeByLevel,
  startLine,
  stepLength,
  timedSlowings,
} from '../../../sim/index.ts';
import { usesOf } from '../../../src/screens/measure/uses.ts';
import { PLAYER_RANGES } from '../../../src/state/playerRanges.ts';
import { choosePreset, knownPlayer, player, step } from '../../../src/state/settings.ts';
import { greenSpeed, ground, slope } from '../../../src/state/situation.ts';
import { degreesText, measuredWords } from '../../../src/text/measure.ts';

const day = '2026-05-02';
type Kept = MeasuredGreen | MeasuredPlayer;
const must = <Value>(value: Value | undefined): Value => {
  if (value === undefined) throw new Error('nothing measured');
  return value;
};

/** Rolls that read so many feet over three seconds or so. */
const timed = (there: readonly number[], back: readonly number[] = []): Kept => {
  const rolls = [
    ...there.map((feet) => ['there', feet] as const),
    ...back.map((feet) => ['back', feet] as const),
  ].map(([way, feet]) => ({ way, distance: feetToMetres((9 * 9) / feet), seconds: 3 }));
  return {
    day,
    ground: 'grass',
    by: 'timedRolls',
    rolls,
    result: must(measureGreenSpeed(timedSlowings(rolls))),
  };
};
const level = (degrees: number): Kept => {
  const pairs = [1, 2, 3].map(() => ({
    facing: degreesToRadians(degrees),
    turned: degreesToRadians(-degrees),
  }));
  return { day, ground: 'grass', by: 'level', pairs, result: must(slopeByLevel(pairs)) };
};
const gates = (passes: number, tries: number, width = 0.06): Kept => {
  const records = [{ width, distance: 0.6, passes, tries }];
  return { day, by: 'gates', gates: records, result: must(startLine(records)) };
};
const pace = (shares: readonly number[]): Kept => {
  const rolls = shares.map((share) => ({ target: 6, past: 6 * share }));
  return { day, by: 'paceRolls', rolls, result: must(paceControl(rolls)) };
};
const walks = (length: number, steps: number): Kept => ({
  day,
  by: 'walks',
  walks: [{ length, steps }],
  result: must(stepLength([{ length, steps }])),
});

const say = (kept: Kept): string => {
  const { answer, more } = measuredWords(kept, 'imperial');
  return [answer, ...more].join(' ');
};

describe('the sentence', () => {
  it('says green speed with unit, margin and number of rolls, and what two more would bring', () => {
    expect(say(timed([10, 10.2], [9.8, 10]))).toMatch(
      /^This green runs 10 ft, give or take [\d.]+ ft \(95%\), from 4 rolls; two more would bring the margin to about [\d.]+ ft\. Along the line no slope is shown: /,
    );
  });
  it('says that rolls one way hold the slope too', () => {
    const words = say(timed([10, 10]));
    expect(words).toMatch(/^Rolled this way this green reads /);
    // One way holds half the difference of both: 1/(1/10 -+ 0.01/(2 x 0.3916)) are 11.46 and 8.87 ft.
    expect(words).toContain(
      'climbs 1% that way the true speed is 11.5 ft, if it falls 1%, 8.9 ft. Roll the same line back.',
    );
  });
  it('shows a slope that is there', () => {
    // 0.3916 (1/8 - 1/14) = 2.1%.
    expect(say(timed([8, 8.1, 7.9], [14, 14, 14]))).toContain('it climbs 2.1% the first way');
  });
  it('gives a wide interval by its ends', () => {
    expect(say(timed([6, 16], [14]))).toMatch(
      /^This green runs between [\d.]+ and [\d.]+ ft \(95%\), most likely/,
    );
  });
  it('names what the rolls disagree about', () => {
    expect(say(timed([6, 12, 8], [7, 14, 11]))).toContain('as much as a thumb on a watch explains');
  });
  it('says a slope by level, or that none is shown', () => {
    // 1 degree is 1.75%: MODEL.md section 6, rounded as screens round.
    expect(say(level(1))).toMatch(
      /^The line climbs 1\.7% forwards, give or take 0\.\d% \(95%\), from 3 pairs/,
    );
    expect(say(level(0.02))).toMatch(/^No slope is shown along this line: at most/);
  });
  it('gives one end where all or none passed, and says so', () => {
    expect(say(gates(10, 10))).toMatch(/at most [\d.]+°: all 10 balls passed\. No lower end is known\./);
    expect(say(gates(0, 10))).toMatch(/at least [\d.]+°: none of 10 balls passed\. No upper end is known\./);
    expect(say(gates(9, 10))).toContain('one miss gives no lower end');
    expect(say(gates(1, 10))).toContain('one pass gives no upper end');
    expect(say(gates(1, 2))).toContain('neither end');
  });
  it('says a pace habit only when there is one', () => {
    expect(say(pace([0.1, -0.1, 0.05, -0.06]))).toContain('No habit is shown');
    expect(say(pace([-0.1, -0.12, -0.09, -0.11]))).toContain('On average you roll 11% short');
  });
  it('never shows a figure that is not a number', () => {
    for (const kept of [
      timed([10]),
      timed([6, 16], [14]),
      level(0),
      gates(1, 2),
      pace([0, 0]),
      walks(20, 25),
    ])
      expect(say(kept)).not.toMatch(/NaN|Infinity|undefined/);
  });
  it('writes angles as they are read', () => {
    expect(degreesText(degreesToRadians(0.84))).toBe('0.8°');
    expect(degreesText(degreesToRadians(12.4))).toBe('12°');
  });
});

describe('taking a result over', () => {
  beforeEach(() => {
    choosePreset(PRESETS[0].id);
  });
  const take = (kept: Kept, label: string): string => {
    const use = usesOf(kept, 'imperial').find((one) => one.label === label);
    if (use === undefined) throw new Error(`no ${label}`);
    return use.take();
  };

  it('sets the green speed and the slope of the putt in hand', () => {
    const kept = timed([8, 8.1, 7.9], [14, 14, 14]);
    expect(take(kept, 'Use this green speed')).toMatch(/^Every screen now putts on 10\.2 ft\.$/);
    expect(greenSpeed.value).toBe(kept.by === 'timedRolls' ? kept.result.greenSpeed.value : Number.NaN);
    ground.value = 'green';
    take(kept, 'Use this slope');
    expect(ground.value).toBe('plane');
    expect(slope.value).toBeCloseTo(0.021, 3);
  });
  it('stays within what the screens take, and says so', () => {
    expect(take(timed([3, 3], [3, 3]), 'Use this green speed')).toMatch(
      /now putts on 4 ft\. 3 ft lies outside .*\(4 ft to 16 ft\)/,
    );
    expect(greenSpeed.value).toBeCloseTo(feetToMetres(4), 12);
    expect(take(level(7), 'Use this slope')).toContain('outside');
    expect(slope.value).toBe(0.08);
    take(gates(1, 30, 0.3), 'Use this as my start line');
    expect(player.value.lineSd).toBe(PLAYER_RANGES.lineSd.max);
  });
  it('offers no slope that may be none, and no start line without a value', () => {
    expect(usesOf(timed([10, 10.1], [10, 9.9]), 'imperial').map(({ label }) => label)).toEqual([
      'Use this green speed',
    ]);
    // A preset in hand may be narrowed by it all the same.
    expect(usesOf(gates(10, 10), 'imperial').map(({ label }) => label)).toEqual(['Narrow Tour by this']);
  });
  it('narrows a preset once by the same balls, and offers nothing of the kind for balls to one distance', () => {
    const labels = (kept: Parameters<typeof usesOf>[0]): string[] =>
      usesOf(kept, 'imperial').map(({ label }) => label);
    choosePreset('tour');
    const one = gates(15, 20);
    expect(labels(one)).toEqual(['Narrow Tour by this', 'Use this as my start line']);
    take(one, 'Narrow Tour by this');
    expect(knownPlayer.value.origin).toMatchObject({ kind: 'preset', narrowedBy: [{ day: one.day }] });
    expect(labels(one)).toEqual(['Use this as my start line']);
    expect(labels(pace([0.1, -0.1, 0.05]))).toEqual(['Use this as my pace']);
    choosePreset('tour');
  });
  it('takes a pace habit only when one is shown, and leaves the other errors alone', () => {
    const before = player.value;
    expect(take(pace([0.1, -0.1, 0.05, -0.06]), 'Use this as my pace')).toContain('habit is left as it was');
    expect(player.value).toEqual({ ...before, paceSd: player.value.paceSd });
    expect(knownPlayer.value.origin).toEqual({ kind: 'byHand' });
    take(pace([-0.1, -0.12, -0.08, -0.11]), 'Use this as my pace');
    expect(player.value.paceBias).toBeCloseTo(-0.1025, 12);
    expect(player.value.lineSd).toBe(before.lineSd);
  });
  it('keeps a step', () => {
    expect(take(walks(20, 25), 'Use this as my step')).toContain('31 in');
    expect(step.value).toBeCloseTo(0.8, 12);
    expect(take(walks(100, 4), 'Use this as my step')).toContain('outside');
    expect(step.value).toBe(1.3);
  });
});
