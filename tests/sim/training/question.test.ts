/** Question sets: every drill in the house can be asked, and its putts are what the drill promises. */
import { describe, expect, it } from 'vitest';
import { READ_DRILLS } from '../../../drills/index.ts';
import { readDrillSchema } from '../../../drills/schema.ts';
import { readPutt } from '../../../sim/read/line.ts';
import { checkPutt } from '../../../sim/roll/check.ts';
import { sampleSurface } from '../../../sim/surface/sample.ts';
import type { ReadDrill } from '../../../sim/training/drill.ts';
import { puttOfQuestion, type Question } from '../../../sim/training/putt-question.ts';
import { makeReadSet } from '../../../sim/training/question.ts';

const DEGREES_40 = (40 * Math.PI) / 180;
const named = (id: string): ReadDrill => {
  const drill = READ_DRILLS.find((one) => one.id === id);
  if (drill === undefined) throw new Error(`no drill ${id}`);
  return drill;
};
const groupsOf = (questions: readonly Question[]): Question[][] =>
  [...new Set(questions.map(({ group }) => group))].map((group) =>
    questions.filter((question) => question.group === group),
  );

describe('drill files', () => {
  it('are at least seven, with ids of their own', () => {
    expect(READ_DRILLS.length).toBeGreaterThanOrEqual(7);
    expect(new Set(READ_DRILLS.map(({ id }) => id)).size).toBe(READ_DRILLS.length);
    expect(new Set(READ_DRILLS.map(({ name }) => name)).size).toBe(READ_DRILLS.length);
  });

  it('keep the ids that records refer to', () => {
    // Renaming one orphans people's records: add to this list, never change it.
    const kept = [
      'pin-high-sidehill',
      'left-and-right',
      'up-and-down-pairs',
      'three-green-speeds',
      'die-and-firm',
      'long-lag',
      'short-testers',
      'whole-greens',
      'long-greens',
    ];
    expect(READ_DRILLS.map(({ id }) => id)).toEqual(expect.arrayContaining(kept));
  });

  it.each([
    ['an unknown field', { colour: 'red' }],
    ['an unknown field inside', { shown: { slope: false, aim: true } }],
    ['a range the wrong way round', { lengthM: [4, 2] }],
    ['a slope of 20%', { slope: [0.01, 0.2] }],
    ['a length that is not a number', { lengthM: [Number.NaN, 4] }],
    ['no pace', { paceM: [] }],
    ['one pace to compare', { group: 'paces', paceM: [0.3] }],
    ['a mirrored green', { surface: 'green', group: 'leftAndRight' }],
    ['an id with blanks', { id: 'my drill' }],
  ])('are turned down for %s', (_name, change) => {
    const good = named('pin-high-sidehill');
    expect(readDrillSchema.safeParse(good).success).toBe(true);
    expect(readDrillSchema.safeParse({ ...good, ...change }).success).toBe(false);
  });

  it('are turned down when a field is missing', () => {
    for (const field of Object.keys(named('long-lag'))) {
      const lacking: Record<string, unknown> = { ...named('long-lag') };
      delete lacking[field];
      expect(readDrillSchema.safeParse(lacking).success, field).toBe(false);
    }
  });
});

describe.each(READ_DRILLS.map((drill) => [drill.id, drill] as const))('sets of %s', (_id, drill) => {
  const questions = makeReadSet(drill, 'test');

  it('are ten, numbered, within the drill’s ranges, each with a line that starts within 40 degrees', () => {
    expect(questions.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    for (const question of questions) {
      // A micrometre: the length is measured back from the two places.
      expect(question.length).toBeGreaterThan(drill.lengthM[0] - 1e-6);
      expect(question.length).toBeLessThan(drill.lengthM[1] + 1e-6);
      expect(question.slope).toBeGreaterThan(drill.slope[0] - 1e-9);
      expect(question.slope).toBeLessThan(drill.slope[1] + 1e-9);
      expect(drill.paceM).toContain(question.pace);
      const read = readPutt(puttOfQuestion(question), question.pace);
      if (read.status !== 'ok') throw new Error(read.reason);
      expect(Math.abs(read.start)).toBeLessThanOrEqual(DEGREES_40);
      expect(read.aimOffset).toBe(question.trueAim);
      expect(checkPutt(puttOfQuestion(question))).toBeUndefined();
    }
  });

  it('never cross ground steeper than 5%, looked at every tenth of the way', () => {
    // A believable green: most of it 1 to 3%. MODEL.md section 1: from 6.5% on no ball rests at 12 ft.
    for (const question of questions) {
      const { surface, ball, hole } = puttOfQuestion(question);
      const found = { height: 0, gradientX: 0, gradientY: 0 };
      for (let tenth = 0; tenth <= 10; tenth++) {
        const x = ball.x + (tenth / 10) * (hole.x - ball.x);
        const y = ball.y + (tenth / 10) * (hole.y - ball.y);
        expect(sampleSurface(surface, x, y, found)).toBe(true);
        // A twentieth of a percent: the places looked at when the putt was drawn are others.
        expect(Math.hypot(found.gradientX, found.gradientY)).toBeLessThan(0.0505);
      }
    }
  });

  it('come out the same for the same seed and different for another', () => {
    expect(makeReadSet(drill, 'test')).toEqual(questions);
    expect(makeReadSet(drill, 'other')[0].trueAim).not.toBe(questions[0].trueAim);
  });

  it('survive a trip through text, as records make it', () => {
    expect(JSON.parse(JSON.stringify(questions))).toEqual(questions);
  });
});

describe('groups', () => {
  it('pair an uphill with a downhill putt of the same length and slope', () => {
    const groups = groupsOf(makeReadSet(named('up-and-down-pairs'), 5));
    expect(groups.map((group) => group.length)).toEqual([2, 2, 2, 2, 2]);
    for (const [one, two] of groups) {
      expect(new Set([one.climb, two.climb])).toEqual(new Set(['up', 'down']));
      expect(one.slope).toBeCloseTo(two.slope, 12);
      expect(one.length).toBeCloseTo(two.length, 12);
      expect(one.direction).toBe(two.direction);
      const [up, down] = one.climb === 'up' ? [one, two] : [two, one];
      // Slower and longer under way, downhill breaks more (MODEL.md section 1).
      expect(Math.abs(down.trueAim)).toBeGreaterThan(Math.abs(up.trueAim));
    }
  });

  it('mirror a putt so that the true aims are opposite', () => {
    // The solver finds each aim by itself: a tenth of a millimetre.
    for (const [one, two] of groupsOf(makeReadSet(named('left-and-right'), 6)))
      expect(Math.abs(one.trueAim + two.trueAim)).toBeLessThan(1e-4);
  });

  it('ask one putt at three green speeds, the faster the more break, and fill up with one single putt', () => {
    const groups = groupsOf(makeReadSet(named('three-green-speeds'), 7));
    expect(groups.map((group) => group.length)).toEqual([3, 3, 3, 1]);
    for (const group of groups.slice(0, 3)) {
      const sorted = group.toSorted((a, b) => a.greenSpeed - b.greenSpeed);
      expect(new Set(group.map(({ ball }) => ball.y)).size).toBe(1);
      expect(Math.abs(sorted[0].trueAim)).toBeLessThan(Math.abs(sorted[1].trueAim));
      expect(Math.abs(sorted[1].trueAim)).toBeLessThan(Math.abs(sorted[2].trueAim));
    }
  });

  it('ask one putt to die and firm, firm with less break', () => {
    for (const group of groupsOf(makeReadSet(named('die-and-firm'), 8))) {
      const [die, firm] = group.toSorted((a, b) => a.pace - b.pace);
      expect([die.pace, firm.pace]).toEqual([0.1524, 0.762]);
      expect(Math.abs(firm.trueAim)).toBeLessThan(Math.abs(die.trueAim));
    }
  });

  it('put pin-high putts on both sides of the hole over a few sets', () => {
    const directions = [1, 2, 3].flatMap((seed) =>
      makeReadSet(named('pin-high-sidehill'), seed).map(({ direction }) => direction),
    );
    expect(new Set(directions)).toEqual(new Set(['leftToRight', 'rightToLeft']));
  });
});

describe('an impossible drill', () => {
  it('is refused with a sentence that says how to mend it', () => {
    // 6% at a green speed of 14 ft holds no ball (MODEL.md section 1: stimp 12 holds up to 6.5%, 14 up to 5.6%).
    const impossible: ReadDrill = {
      ...named('pin-high-sidehill'),
      slope: [0.06, 0.06],
      greenSpeedM: [4.27, 4.27],
    };
    expect(() => makeReadSet(impossible, 1)).toThrow(/Got no putt .* expected .*: widen/);
  });
});
