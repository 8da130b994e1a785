/** What an import would do, from records and files written out: added, changed, kept, refused with the reason. */
import { describe, expect, it } from 'vitest';
import type { PlanLine } from '../../../src/store/importPlan.ts';
import { changedFields } from '../../../src/store/importPlan.ts';
import type { RecordsNow } from '../../../src/store/recordsNow.ts';
import { afterPlan, noRecords, nowWith, planOf } from '../../support/imports.ts';
import { literalBackup } from '../../support/literalBackup.ts';

type File = ReturnType<typeof literalBackup>;
// biome-ignore lint/suspicious/noExplicitAny: records are spoilt on purpose
type Loose = any;

/** A file made from the literal one by a change. */
const fileWith = (change: (tables: File['tables'] & Loose) => void): string => {
  const file = literalBackup();
  change(file.tables);
  return JSON.stringify(file);
};
/** What is here when the literal backup, changed, was imported. */
const hereWith = (change: (tables: File['tables'] & Loose) => void = () => undefined): RecordsNow => {
  return nowWith(afterPlan(planOf(fileWith(change))) as Record<string, { id: string }[]>);
};
const linesOf = (lines: readonly PlanLine[], verdict: PlanLine['verdict']): string[] =>
  lines.filter((line) => line.verdict === verdict).map(({ place, reason }) => `${place}: ${reason ?? ''}`);
const refusals = (text: string, now?: RecordsNow): string[] => linesOf(planOf(text, now).lines, 'refuse');
const ROUND = 'b4a1c7de-round';

describe('a plan', () => {
  it('shows a record that differs, field by field, as it is and as it would be', () => {
    const { lines, counts } = planOf(
      fileWith(({ putts }) => {
        putts[1].distance = 0.9;
      }),
      hereWith(),
    );
    expect(counts).toEqual({ add: 0, change: 1, keep: 0, same: 10, refuse: 0 });
    const [{ here, record }] = lines.filter(({ verdict }) => verdict === 'change');
    expect(here && record && changedFields(here, record)).toEqual([
      { field: 'distance', before: 0.6096, after: 0.9 },
    ]);
  });

  it('keeps what is here, when the person says so', () => {
    const text = fileWith(({ putts, rounds }) => {
      putts[1].distance = 0.9;
      rounds[0].course = 'Elsewhere';
    });
    const plan = planOf(text, hereWith(), { differing: 'keep' });
    expect(plan.counts).toEqual({ add: 0, change: 0, keep: 2, same: 9, refuse: 0 });
    expect(afterPlan(plan)).toEqual(afterPlan(planOf(fileWith(() => undefined))));
  });

  it.each([
    [
      'a putt farther than any green',
      ({ putts }: Loose) => {
        putts[2].distance = 75;
      },
      /putts, record 3: Got “75” for distance, expected at most 61 m\./,
    ],
    [
      'a distance as text',
      ({ putts }: Loose) => {
        putts[2].distance = '3';
      },
      /putts, record 3: Got “3” for distance, expected number/,
    ],
    [
      'a distance that is nothing (NaN in JSON)',
      ({ putts }: Loose) => {
        putts[2].distance = Number.NaN;
      },
      /Got “null” for distance/,
    ],
    [
      'a field nobody knows',
      ({ rounds }: Loose) => {
        rounds[0].wind = 3;
      },
      /rounds, record 1: Got the field “wind”, which no record has/,
    ],
    [
      'a field that is not there',
      ({ practice }: Loose) => {
        delete practice[0].attempts;
      },
      /practice, record 1: Got nothing for attempts/,
    ],
    [
      'a putt whose round is nowhere',
      ({ putts }: Loose) => {
        putts[2].roundId = 'another-round';
      },
      /putts, record 3: Got a putt whose round is neither in the file nor here/,
    ],
    [
      'a hole the round does not have',
      ({ putts }: Loose) => {
        putts[2].hole = 10;
      },
      /putts, record 3: Got hole 10 of a round of 9/,
    ],
    [
      'a stroke twice',
      ({ putts }: Loose) => {
        putts[1].stroke = 1;
      },
      /putts, record 1: Got a second stroke number 1 on hole 1[\s\S]*putts, record 2: Got a second stroke/,
    ],
    [
      'a text where a record should be',
      ({ practice }: Loose) => {
        practice[0] = 'x';
      },
      /practice, record 1: Got “x”/,
    ],
    [
      'an answer to a question nobody asked',
      ({ readSets }: Loose) => {
        readSets[0].answers[0].number = 2;
      },
      /readSets, record 1: .*each answer to belong to one question/,
    ],
    [
      'a score below nothing',
      ({ drillResults }: Loose) => {
        drillResults[0].score = -1;
      },
      /drillResults, record 1: Got “-1” for score, expected at least 0/,
    ],
    [
      'a carpet that slows no ball',
      ({ measurements }: Loose) => {
        measurements[0].result.greenSpeed.value = null;
      },
      /measurements, record 1: Got “null” for result\.greenSpeed\.value, expected number/,
    ],
    [
      'a plan of a week without sessions',
      ({ plans }: Loose) => {
        plans[0].sessions = [];
      },
      /plans, record 1: .* for sessions, expected at least 1/,
    ],
  ])('refuses %s', (_what, change, reason) => {
    expect(refusals(fileWith(change)).join('\n')).toMatch(reason);
  });

  it('takes a score of a drill that differs, or keeps the one here, as with practice sets', () => {
    const text = fileWith(({ drillResults }) => {
      drillResults[0].score = 15;
    });
    expect(planOf(text, hereWith()).counts).toMatchObject({ change: 1, same: 10, refuse: 0 });
    expect(planOf(text, hereWith(), { differing: 'keep' }).counts).toMatchObject({ keep: 1, same: 10 });
  });

  it('takes a plan of a week that differs with its score, or keeps the one here with its own', () => {
    const text = fileWith(({ plans, drillResults }) => {
      plans[0].revision = 4;
      plans[0].sessions[0].items[0].score = 16;
      drillResults[1].score = 16;
    });
    expect(planOf(text, hereWith()).counts).toMatchObject({ change: 2, same: 9, refuse: 0 });
    expect(planOf(text, hereWith(), { differing: 'keep' }).counts).toMatchObject({ keep: 2, same: 9 });
  });

  it('refuses different records with one id, all of them, and counts equal copies once', () => {
    const doubled = fileWith(({ practice }) => {
      practice.push({ ...practice[0] }, { ...practice[0], id: 'b4a1c7de-other' });
    });
    expect(planOf(doubled).counts).toMatchObject({ add: 12, same: 1, refuse: 0 });
    const different = fileWith(({ practice }) => practice.push({ ...practice[0], holed: 2 }));
    expect(refusals(different)).toHaveLength(2);
    expect(refusals(different)[0]).toMatch(/practice, record 1: Got the id .* on 2 different records/);
  });

  it('lets a hole in whole or not at all: one bad putt refuses the others of its hole, and no more', () => {
    const text = fileWith(({ putts }) => {
      putts[1].distance = -1;
    });
    const found = refusals(text);
    expect(found).toHaveLength(2);
    expect(found.join('\n')).toMatch(/record 1: Another putt of this hole is refused \(putts, record 2\)/);
    expect(planOf(text).counts).toMatchObject({ add: 9, refuse: 2 });
  });

  it('refuses the putts of a refused round, naming it, unless the round is here already', () => {
    const text = fileWith(({ rounds }) => {
      rounds[0].holes = 10;
    });
    expect(refusals(text).join('\n')).toMatch(/putts, record 1: Its round is refused \(rounds, record 1\)/);
    expect(refusals(text)).toHaveLength(4);
    expect(refusals(text, hereWith())).toHaveLength(1);
  });

  it('refuses a stroke that another putt here already has', () => {
    const text = fileWith(({ putts }) => {
      putts[2].id = 'another-putt';
    });
    expect(refusals(text, hereWith()).join()).toMatch(
      /putts, record 3: Got a second stroke number 1 on hole 2/,
    );
  });

  it('lets two putts change places', () => {
    const swapped = fileWith(({ putts }) => {
      [putts[0].stroke, putts[1].stroke] = [2, 1];
    });
    expect(planOf(swapped, hereWith()).counts).toMatchObject({ change: 2, refuse: 0 });
  });

  it('changes a putt that is in the file twice, alike, once', () => {
    const text = fileWith(({ putts }) => {
      putts[1].distance = 0.9;
      putts.push({ ...putts[1] });
    });
    expect(planOf(text, hereWith()).counts).toEqual({ add: 0, change: 1, keep: 0, same: 11, refuse: 0 });
  });

  it('follows one refusal to the next: a putt that cannot move away keeps its stroke', () => {
    // Record 3 would leave hole 2 for a hole the round does not have; so its stroke there is not free for the new one.
    const text = fileWith(({ putts }) => {
      putts.push({ ...putts[2], id: 'a-new-putt-on-2' });
      putts[2].hole = 12;
    });
    const found = refusals(text, hereWith()).join('\n');
    expect(found).toMatch(/record 3: Got hole 12 of a round of 9/);
    expect(found).toMatch(/record 4: Got a second stroke number 1 on hole 2/);
  });

  it('refuses to cut a round shorter than the putts recorded here', () => {
    const here = hereWith(({ rounds, putts }) => {
      rounds[0].holes = 18;
      putts[2].hole = 14;
    });
    const text = fileWith(({ putts }) => {
      putts.length = 0;
    });
    expect(refusals(text, here).join()).toMatch(
      /rounds, record 1: Got a round of 9 holes, expected at least 14/,
    );
  });

  it('does not open a round: one open in the file is taken as ended with its last putt', () => {
    const text = fileWith(({ rounds }) => {
      delete rounds[0].endedAt;
    });
    const plan = planOf(text);
    expect(linesOf(plan.lines, 'add').join()).toMatch(/Open in the file: taken as ended with its last putt/);
    expect(afterPlan(plan).rounds).toMatchObject([{ endedAt: 1763801400000 }]);
  });

  it('leaves an open round open that is open in both, and an ended one ended', () => {
    const open = ({ rounds }: Loose): void => {
      delete rounds[0].endedAt;
    };
    const now = hereWith();
    const [round] = now.rounds.values();
    const openHere = { ...now, rounds: new Map([[ROUND, { ...round, endedAt: undefined }]]) };
    expect(planOf(fileWith(open), openHere).counts).toMatchObject({ same: 11, change: 0 });
    expect(planOf(fileWith(open), now).counts).toMatchObject({ same: 11, change: 0 });
    expect(
      planOf(
        fileWith(() => undefined),
        openHere,
      ).counts,
    ).toMatchObject({ same: 10, change: 1 });
  });

  it('two rounds open in the file are both taken as ended', () => {
    const text = fileWith(({ rounds }) => {
      delete rounds[0].endedAt;
      rounds.push({ ...rounds[0], id: 'another-round' });
    });
    const { rounds } = afterPlan(planOf(text)) as { rounds: { endedAt?: number }[] };
    expect(rounds.map(({ endedAt }) => endedAt)).toEqual([1763800000000, 1763801400000]);
  });

  it('merges reading sets answer by answer, whichever is newer', () => {
    const two = ({ readSets }: Loose): void => {
      readSets[0].questions.push({ ...readSets[0].questions[0], number: 2 });
      readSets[0].size = 2;
    };
    const here = hereWith((tables) => {
      two(tables);
      tables.readSets[0].answers = [{ kind: 'aim', number: 2, aim: 0.1, answeredAt: 5 }];
    });
    const plan = planOf(fileWith(two), here);
    expect(plan.counts).toMatchObject({ change: 1, same: 10 });
    const { readSets } = afterPlan(plan) as { readSets: { answers: { number: number }[] }[] };
    expect(readSets[0].answers.map(({ number }) => number)).toEqual([1, 2]);
  });

  it('takes over how far an adaptive set has grown elsewhere', () => {
    const grown = ({ readSets }: Loose): void => {
      readSets[0].size = 10;
      readSets[0].questions.push({ ...readSets[0].questions[0], number: 2 });
    };
    const here = hereWith((tables) => {
      tables.readSets[0].size = 10;
    });
    const plan = planOf(fileWith(grown), here);
    expect(plan.counts).toMatchObject({ change: 1, same: 10 });
    const { readSets } = afterPlan(plan) as { readSets: { questions: { number: number }[] }[] };
    expect(readSets[0].questions.map(({ number }) => number)).toEqual([1, 2]);
  });

  it('refuses a reading set whose id is here with other questions', () => {
    const text = fileWith(({ readSets }) => {
      readSets[0].questions[0].trueAim = 0.5;
    });
    expect(refusals(text, hereWith()).join()).toMatch(
      /readSets, record 1: Got the id of a reading set that is here/,
    );
  });

  it('does not write over a record here that cannot be read', () => {
    const now = {
      ...noRecords(),
      unreadable: { ...noRecords().unreadable, practice: [{ id: 'b4a1c7de-practice', later: 1 }] },
    };
    expect(
      refusals(
        fileWith(() => undefined),
        now,
      ).join(),
    ).toMatch(/practice, record 1: .* stays untouched/);
  });
});
