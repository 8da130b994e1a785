/** Sentences of the data screen, word for word: what is here, how old the backup is, what room is taken. */
import { describe, expect, it } from 'vitest';
import { changeWords } from '../../../src/screens/data/recordWords.ts';
import { ageWords, formatBytes, holdingWords, overviewSentence } from '../../../src/screens/data/words.ts';
import type { KeptMeasurement } from '../../../src/store/measurementSchema.ts';
import type { Plan } from '../../../src/store/planSchema.ts';
import { perTable } from '../../../src/store/tables.ts';
import { LITERAL_BACKUP } from '../../support/literalBackup.ts';

const NONE = perTable(() => 0);

describe('what is on the device', () => {
  it.each([
    [NONE, undefined, 'Nothing is recorded on this device yet.'],
    [
      { ...NONE, rounds: 38, putts: 1204 },
      '2026-04-20',
      '1,204 putts of 38 rounds are on this device; the last backup is 12 days old.',
    ],
    [
      { ...NONE, rounds: 1, putts: 1 },
      undefined,
      '1 putt of 1 round is on this device, and nowhere else: make a backup.',
    ],
    [
      { ...NONE, practice: 1 },
      '2026-05-02',
      '1 practice set is on this device; the last backup is of today.',
    ],
    [
      { ...NONE, practice: 2, readSets: 1 },
      '2026-04-01',
      '2 practice sets and 1 reading set are on this device; the last backup is 31 days old: make one.',
    ],
    [
      { ...NONE, drillResults: 1 },
      '2026-05-02',
      '1 drill score is on this device; the last backup is of today.',
    ],
    [
      { ...NONE, measurements: 1, plans: 2 },
      '2026-05-02',
      '1 measurement and 2 plans of weeks are on this device; the last backup is of today.',
    ],
    [
      { ...NONE, plans: 1 },
      undefined,
      '1 plan of a week is on this device, and nowhere else: make a backup.',
    ],
  ])('is told in one sentence (%o, backup of %s)', (holding, backup, sentence) => {
    expect(overviewSentence(holding, backup, '2026-05-02')).toBe(sentence);
  });

  it('names a round that has no putts yet', () => {
    expect(holdingWords({ ...NONE, rounds: 1 })).toBe('0 putts of 1 round');
  });

  it.each([
    ['2026-05-02', 'is of today'],
    ['2026-05-01', 'is of yesterday'],
    ['2026-04-30', 'is 2 days old'],
    ['2025-05-02', 'is 365 days old'],
    // A clock that was set back.
    ['2026-05-03', /^is of .*2026, which is still to come by the clock of this device$/],
  ])('a backup of %s %s', (made, words) => {
    expect(ageWords(made, '2026-05-02')).toMatch(words);
  });

  it.each([
    [0, '0.0 KB'],
    [9_940, '9.9 KB'],
    [172_000, '172 KB'],
    [1_234_567, '1.2 MB'],
    [2e9, '2.0 GB'],
  ])('%i bytes take %s', (bytes, words) => {
    expect(formatBytes(bytes)).toBe(words);
  });
});

describe('what differs in a record', () => {
  it('is told of measurements by their values, of plans by what is done, without names of fields nobody knows', () => {
    const { measurements, plans } = structuredClone(LITERAL_BACKUP.tables);
    const [carpet] = measurements as unknown as KeptMeasurement[];
    const [plan] = plans as unknown as Plan[];
    if (carpet.by !== 'timedRolls') throw new Error('not the carpet');
    const anew = {
      ...carpet,
      rolls: carpet.rolls.slice(1),
      result: { ...carpet.result, rolls: 1, greenSpeed: { value: 3.048, low: 2.7432, high: 3.3528 } },
    };
    expect(changeWords(carpet, anew, 'imperial')).toEqual([
      'rolls: not the same here and in the file',
      'value: 10.3 ft, give or take 1.2 ft (95%), from 2 rolls here, 10 ft, give or take 1 ft (95%), from 1 roll in the file',
    ]);
    const [session] = plan.sessions;
    const undone = session.items.map(({ doneOn: _day, score: _score, ...item }) => item);
    expect(
      changeWords(plan, { ...plan, revision: 4, sessions: [{ ...session, items: undone }] }, 'imperial'),
    ).toEqual([
      'changes so far: 3 here, 4 in the file',
      'sessions: 1 of 2 done, scores 13 here, 0 of 2 done in the file',
    ]);
    expect(changeWords(plan, { ...plan, sessions: [{ ...session, minutes: 25 }] }, 'imperial')).toEqual([
      'sessions: not the same here and in the file',
    ]);
  });
});
