/** Files of putting drills: their shape, their words, their order of strokes. */
import { describe, expect, it } from 'vitest';
import { READ_DRILLS } from '../../../drills/index.ts';
import { PUTTING_DRILLS, puttingDrill } from '../../../drills/putting-drills.ts';
import { puttingDrillSchema } from '../../../drills/putting-schema.ts';
import { type PuttingDrill, strokeOrder } from '../../../sim/training/putting-drill.ts';
import { describeDrill, drillSteps, joined, scoreWords } from '../../../src/text/drills.ts';

const named = (id: string): PuttingDrill => {
  const drill = puttingDrill(id);
  if (drill === undefined) throw new Error(`no drill ${id}`);
  return drill;
};

describe('putting drill files', () => {
  it('are at least fifteen, on grass and on carpet, for each error, with ids and names of their own', () => {
    expect(PUTTING_DRILLS.length).toBeGreaterThanOrEqual(15);
    const ids = [...PUTTING_DRILLS, ...READ_DRILLS].map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(new Set(PUTTING_DRILLS.map(({ name }) => name)).size).toBe(PUTTING_DRILLS.length);
    for (const trains of ['line', 'pace', 'read', 'mixed'])
      expect(PUTTING_DRILLS.filter((drill) => drill.trains === trains).length, trains).toBeGreaterThanOrEqual(
        3,
      );
    expect(PUTTING_DRILLS.filter(({ ground }) => ground !== 'grass').length).toBeGreaterThanOrEqual(5);
  });

  it('keep the ids that records refer to', () => {
    // Renaming one orphans people's records: add to this list, never change it.
    const kept = [
      'start-gate',
      'straight-string',
      'short-ladder',
      'best-of-three-sets',
      'break-gate',
      'clock-four-sides',
      'up-and-down-short',
      'run-of-short-putts',
      'sidehill-both-ways',
      'one-read-five-balls',
      'soft-and-firm',
      'lag-to-circles',
      'guess-before-looking',
      'three-by-three',
      'first-putt-ladder',
      'long-and-short',
      'reach-but-not-far',
      'firm-and-back',
      'two-putts-from-far',
      'nine-holes-one-ball',
      'carpet-gate',
      'carpet-two-gates',
      'carpet-gate-run',
      'carpet-pace-zone',
      'carpet-three-lengths',
    ];
    expect(PUTTING_DRILLS.map(({ id }) => id)).toEqual(expect.arrayContaining(kept));
  });

  const clock = named('clock-four-sides');
  const gate = named('start-gate');
  const lag = named('lag-to-circles');
  const nine = named('nine-holes-one-ball');
  it.each<[string, PuttingDrill, Record<string, unknown>]>([
    ['an unknown field', clock, { colour: 'red' }],
    ['a station with an unknown field', clock, { stations: [{ ...clock.stations[0], grain: 1 }] }],
    ['12 o’clock written as 12', clock, { stations: [{ ...clock.stations[0], clock: 12 }] }],
    ['a slope the wrong way round', clock, { stations: [{ ...clock.stations[0], slope: [0.03, 0.01] }] }],
    ['a slope wanted on carpet', gate, { stations: [{ ...gate.stations[0], slope: [0.01, 0.02] }] }],
    ['a hole on carpet', gate, { target: 'hole' }],
    ['a gate that is scored and missing', gate, { gates: [] }],
    ['a gate that is there and not scored', clock, { gates: gate.gates }],
    ['a gate narrower than a ball', gate, { gates: [{ widthM: 0.04, fromBallM: 0.5 }] }],
    ['a gate behind the mark', gate, { gates: [{ widthM: 0.06, fromBallM: 2.4 }] }],
    ['holing at a mark', gate, { scoring: clock.scoring, gates: [] }],
    ['reading trained on a known line', clock, { trains: 'read', reading: 'known' }],
    [
      'zones from the outside in',
      lag,
      {
        scoring: {
          ...lag.scoring,
          stroke: {
            kind: 'zones',
            holed: 3,
            zones: [
              { shape: 'circle', radiusM: 0.9, points: 1 },
              { shape: 'circle', radiusM: 0.45, points: 2 },
            ],
          },
        },
      },
    ],
    ['putts of which more are better', nine, { scoring: { ...nine.scoring, better: 'higher' } }],
    ['a placeholder nobody fills', clock, { steps: ['Go to {somewhere} now.', ...clock.steps] }],
    ['two steps only', clock, { steps: clock.steps.slice(0, 2) }],
  ])('are turned down for %s', (_name, drill, change) => {
    expect(puttingDrillSchema.safeParse(drill).success).toBe(true);
    expect(puttingDrillSchema.safeParse({ ...drill, ...change }).success).toBe(false);
  });
});

describe.each(PUTTING_DRILLS.map((drill) => [drill.id, drill] as const))('words of %s', (_id, drill) => {
  it('hold no number with a unit of their own', () => {
    // Whatever is measured is shown in the person's units, so no file may say it.
    const unit =
      /\d\s*(ft|feet|foot|in|inch|inches|m|cm|mm|yd|yards?|metres?|meters?|%|degrees?|°)\b|["″′]\s|\b(feet|foot|inch|inches|metres?|meters?|yards?|cm|mm)\b/i;
    for (const text of [drill.name, drill.purpose, ...drill.needs, ...drill.steps])
      expect(text).not.toMatch(unit);
  });

  it.each(['imperial', 'metric'] as const)('have every number filled in (%s)', (units) => {
    const texts = [...drillSteps(drill, units), describeDrill(drill, units), scoreWords(drill)];
    for (const text of texts) expect(text).not.toMatch(/[{}]|NaN|undefined|Infinity/);
    const other = units === 'imperial' ? / (cm|m|mm)\b/ : / (ft|in) (past|short|wide|away|from|apart)/;
    for (const text of texts) expect(text).not.toMatch(other);
  });
});

describe('lists', () => {
  it('say a unit once where it is the same', () => {
    expect(joined(['4 ft', '6 ft', '4 ft', '8 ft'])).toBe('4, 6 and 8 ft');
    expect(joined(['20 in', '5 ft'])).toBe('20 in and 5 ft');
    expect(joined(['3', '3'])).toBe('3');
  });
});

describe('the order of strokes', () => {
  it('takes all balls of one place before the next, or one of each in turn', () => {
    const stations = named('clock-four-sides')
      .stations.slice(0, 2)
      .map((one) => ({ ...one, balls: 2 }));
    const drill = { ...named('clock-four-sides'), stations };
    expect(strokeOrder(drill, 1)).toEqual([0, 0, 1, 1]);
    expect(strokeOrder({ ...drill, order: 'inTurn' }, 1)).toEqual([0, 1, 0, 1]);
  });

  it('is shuffled by its seed, every ball once', () => {
    const drill = named('nine-holes-one-ball');
    const one = strokeOrder(drill, 'a');
    expect(strokeOrder(drill, 'a')).toEqual(one);
    expect(strokeOrder(drill, 'b')).not.toEqual(one);
    expect(one.toSorted()).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8]);
  });
});
