/** Records as a player could have written them down, for tests: holes from distances, and many rounds from a seed. */
import {
  holedByAngleAndDistance,
  metresToFeet,
  type PracticeSet,
  type RecordedPutt,
  type RecordedRound,
  seededRandom,
} from '../../sim/index.ts';

let written = 0;

/** One stroke; what is not given is a struck putt of 3 m on hole 1 that missed by half a metre, or dropped. */
export function recordedPutt(fields: Partial<RecordedPutt> = {}): RecordedPutt {
  written++;
  const putt: RecordedPutt = {
    id: `p${String(written).padStart(9, '0')}`,
    roundId: 'r1',
    hole: 1,
    stroke: 1,
    kind: 'putt',
    distance: 3,
    holed: false,
    recordedAt: 1_700_000_000_000 + written,
    ...fields,
  };
  return putt.holed || putt.kind !== 'putt' || putt.miss !== undefined
    ? putt
    : { ...putt, miss: { leave: 0.5 } };
}

/** One hole putted out: the distances before each stroke, m; the last one drops. */
export const holedOut = (distances: readonly number[], fields: Partial<RecordedPutt> = {}): RecordedPutt[] =>
  distances.map((distance, i) => {
    const holed = i === distances.length - 1;
    const miss = holed ? undefined : { leave: distances[i + 1] };
    return recordedPutt({ ...fields, stroke: i + 1, distance, holed, ...(miss && { miss }) });
  });

export interface MadeRecord {
  readonly rounds: readonly RecordedRound[];
  readonly putts: readonly RecordedPutt[];
  readonly sets: readonly PracticeSet[];
}

/** Rounds of 18 holes by a player of 1.3 degrees and 10%, day after day, with a practice set each. */
export function madeRecord(rounds: number, seed: string): MadeRecord {
  const random = seededRandom(seed);
  const pick = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)];
  const made = { rounds: [] as RecordedRound[], putts: [] as RecordedPutt[], sets: [] as PracticeSet[] };
  for (let r = 0; r < rounds; r++) {
    const day = new Date(Date.UTC(2020, 0, 1 + r)).toISOString().slice(0, 10);
    const roundId = `round-${r}`;
    const startedAt = Date.UTC(2020, 0, 1 + r);
    made.rounds.push({ id: roundId, day, startedAt, endedAt: startedAt + 1, holes: 18, withoutPutt: [] });
    for (let hole = 1; hole <= 18; hole++) {
      let distance = 0.5 + 14 * random() ** 2;
      for (let stroke = 1; stroke <= 6; stroke++) {
        const feet = metresToFeet(distance);
        const holed = stroke === 6 || random() < holedByAngleAndDistance(feet, 0.0227, 0.1);
        const leave = 0.1 + 0.2 * distance * random();
        const putt = recordedPutt({
          id: `${roundId}-${hole}-${stroke}`,
          roundId,
          hole,
          stroke,
          distance,
          holed,
          recordedAt: startedAt + hole * 60_000 + stroke,
          climb: pick(['up', 'down', 'level']),
          breaks: pick(['leftToRight', 'rightToLeft', 'straight']),
          paceMeant: pick(['die', 'normal', 'firm']),
        });
        made.putts.push(
          holed
            ? putt
            : {
                ...putt,
                miss: { leave, side: pick(['high', 'low', 'online']), reach: pick(['short', 'past']) },
              },
        );
        if (holed) break;
        distance = leave;
      }
    }
    const attempts = 20;
    made.sets.push({
      id: `set-${r}`,
      day,
      recordedAt: startedAt,
      distance: pick([1.5, 2, 3]),
      attempts,
      holed: Math.floor(random() * attempts),
      ground: pick(['grass', 'carpet']),
    });
  }
  return made;
}
