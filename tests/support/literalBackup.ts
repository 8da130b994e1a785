/** One backup, written out by hand: a round of two holes, a practice set, a reading set, a score of a drill, two measurements, a plan. Not made by the program. */

import { RECORDS_VERSION } from '../../src/store/migrations.ts';
import { perTable } from '../../src/store/tables.ts';

/** Word for word as version 5 wrote it, for ever. */
export const LITERAL_5 = {
  format: 'borrow-backup',
  version: 5,
  madeAt: 1764000000000,
  tables: {
    rounds: [
      {
        id: 'b4a1c7de-round',
        day: '2025-11-22',
        startedAt: 1763800000000,
        endedAt: 1763813000000,
        holes: 9,
        course: 'Nonesuch Heath',
        greenSpeed: 3.048,
        withoutPutt: [4],
      },
    ],
    putts: [
      {
        id: 'b4a1c7de-putt-1',
        roundId: 'b4a1c7de-round',
        hole: 1,
        stroke: 1,
        kind: 'putt',
        distance: 4.8768,
        climb: 'down',
        breaks: 'rightToLeft',
        slopeFelt: 'medium',
        paceMeant: 'die',
        startedAsMeant: true,
        paceAsMeant: false,
        holed: false,
        miss: { side: 'low', reach: 'past', leave: 0.6096 },
        recordedAt: 1763800600000,
      },
      {
        id: 'b4a1c7de-putt-2',
        roundId: 'b4a1c7de-round',
        hole: 1,
        stroke: 2,
        kind: 'putt',
        distance: 0.6096,
        holed: true,
        recordedAt: 1763800660000,
      },
      {
        id: 'b4a1c7de-putt-3',
        roundId: 'b4a1c7de-round',
        hole: 2,
        stroke: 1,
        kind: 'conceded',
        distance: 0.3048,
        holed: false,
        recordedAt: 1763801400000,
      },
    ],
    practice: [
      {
        id: 'b4a1c7de-practice',
        day: '2025-11-23',
        recordedAt: 1763900000000,
        distance: 1.8288,
        attempts: 20,
        holed: 13,
        misses: { high: 1, low: 5 },
        breaks: 'leftToRight',
        ground: 'grass',
        note: 'windy; putter B',
      },
    ],
    readSets: [
      {
        id: 'b4a1c7de-reading',
        kind: 'aim',
        feedback: 'each',
        size: 1,
        drillId: 'pin-high-sidehill',
        drillName: 'Pin-high sidehill',
        seed: '7c1d22ab',
        startedAt: 1763930000000,
        day: '2025-11-23',
        questions: [
          {
            number: 1,
            group: 0,
            ground: { kind: 'plane', slope: 0.021, downhill: 1.2 },
            ball: { x: 0.4, y: -2.9 },
            hole: { x: 0, y: 0 },
            greenSpeed: 3.2,
            pace: 0.3,
            length: 2.93,
            slope: 0.021,
            trueAim: -0.27,
            direction: 'leftToRight',
            climb: 'level',
            steepness: 'steep',
          },
        ],
        answers: [
          {
            kind: 'aim',
            number: 1,
            aim: -0.2,
            answeredAt: 1763930020000,
            holedAtAim: 0.31,
            holedAtTrue: 0.44,
          },
        ],
      },
    ],
    drillResults: [
      {
        id: 'b4a1c7de-drill',
        day: '2025-11-24',
        recordedAt: 1763990000000,
        drillId: 'start-gate',
        version: 1,
        ground: 'grass',
        greenSpeed: 3.048,
        score: 14,
        note: 'new gate',
      },
      {
        id: 'week.b4a1c7de-plan.s1-1',
        day: '2025-11-25',
        recordedAt: 1764050000000,
        drillId: 'carpet-gate',
        version: 1,
        ground: 'carpet',
        greenSpeed: 3.4,
        score: 13,
      },
    ],
    measurements: [
      {
        id: 'b4a1c7de-carpet',
        day: '2025-11-24',
        recordedAt: 1763995000000,
        ground: 'carpet',
        by: 'timedRolls',
        rolls: [
          { way: 'there', distance: 2.4384, seconds: 2.8 },
          { way: 'back', distance: 2.8956, seconds: 3.6 },
        ],
        result: {
          greenSpeed: { value: 3.14, low: 2.8, high: 3.52 },
          slope: { value: 0.012, low: -0.001, high: 0.025 },
          readings: { there: 2.68, back: 3.75 },
          rolls: 2,
          scatter: 1,
          marginWithTwoMore: 0.3,
          marginAtBest: 0.19,
        },
      },
      {
        id: 'b4a1c7de-gates',
        day: '2025-11-24',
        recordedAt: 1763996000000,
        by: 'gates',
        gates: [{ width: 0.1, distance: 1, passes: 0, tries: 4 }],
        // None passed: no upper end is known, and a file of JSON has no word for it.
        result: { low: 0.03, passes: 0, tries: 4 },
      },
    ],
    plans: [
      {
        id: 'b4a1c7de-plan',
        madeAt: 1764000000000,
        madeOn: '2025-11-24',
        start: '2025-11-24',
        revision: 3,
        costs: [
          { error: 'line', step: 'lineTenth', saved: { value: 0.3, low: 0.25, high: 0.35 } },
          { error: 'pace', step: 'pacePoint', saved: { value: 0.2, low: 0.15, high: 0.25 } },
          { error: 'read', step: 'readShare', saved: { value: 0.1, low: 0.05, high: 0.15 } },
        ],
        choosePace: false,
        source: 'own',
        holes: 2,
        own: 0.1,
        grass: { greenSpeed: 3.048, slope: 0.02 },
        carpet: { greenSpeed: 3.4 },
        sessions: [
          {
            id: 's1',
            day: '2025-11-25',
            minutes: 20,
            ground: 'carpet',
            items: [
              {
                id: 's1-1',
                kind: 'drill',
                activity: 'carpet-gate',
                trains: 'line',
                minutes: 8,
                why: 'dearest',
                expected: { mean: 12.5, low: 9, high: 16, sd: 2.4, mark: 14, chance: 0.33, repetitions: 12 },
                doneOn: '2025-11-25',
                score: 13,
              },
              {
                id: 's1-2',
                kind: 'reading',
                activity: 'adaptive',
                trains: 'read',
                minutes: 6,
                why: 'next',
              },
            ],
          },
        ],
        test: { session: 's1', item: 's1-1', againOn: '2025-12-09' },
      },
    ],
  },
};

/**
 * The same as a file of the version in use: with empty tables for those that began since. Where a later version changes the shape of its
 * records, this says so field by field.
 */
export const LITERAL_BACKUP = {
  ...LITERAL_5,
  version: RECORDS_VERSION,
  tables: { ...perTable<never[]>(() => []), ...LITERAL_5.tables },
};

/** A copy to spoil. */
export const literalBackup = (): typeof LITERAL_BACKUP => structuredClone(LITERAL_BACKUP);
