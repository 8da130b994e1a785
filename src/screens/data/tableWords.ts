/** The tables of records in words: what one record is called, several of them, and one of them on a line. */
import { puttingDrill } from '../../../drills/putting-drills.ts';
import type { RecordedPutt, RecordedRound } from '../../../sim/index.ts';
import { GROUND_WORDS, KIND_WORDS } from '../../store/csvWords.ts';
import type { Plan } from '../../store/planSchema.ts';
import type { RecordOf, TableName } from '../../store/tables.ts';
import { formatDay, formatLeave, formatLength, type Units } from '../../text/format.ts';
import { measurementLine } from '../../text/measureKept.ts';
import { counted } from './counted.ts';

export interface Wording {
  readonly units: Units;
  /** Of a putt, from the file or from here. */
  readonly roundOf: (id: string) => RecordedRound | undefined;
}

interface TableWords<Kept> {
  /** In the list of an import. */
  readonly name: string;
  readonly one: string;
  readonly many: string;
  /** Among what a backup holds. Default: `many`. */
  readonly inBackup?: string;
  readonly line: (record: Kept, wording: Wording) => string;
}

const placeOf = ({ day, course }: RecordedRound): string => `${formatDay(day)}${course ? `, ${course}` : ''}`;

const puttWords = (putt: RecordedPutt, { units, roundOf }: Wording): string => {
  const round = roundOf(putt.roundId);
  const where = round ? `${placeOf(round)}, hole ${putt.hole}` : `Hole ${putt.hole}`;
  const kind = putt.kind === 'putt' ? 'putt' : KIND_WORDS[putt.kind];
  const end = putt.holed ? ', holed' : putt.miss ? `, left ${formatLeave(putt.miss.leave, units)}` : '';
  return `${where}, ${kind} ${putt.stroke}: ${formatLength(putt.distance, units)}${end}`;
};

export const doneWords = (sessions: Plan['sessions']): string => {
  const items = sessions.flatMap(({ items: some }) => some);
  const scores = items.flatMap(({ score }) => score ?? []);
  const done = items.filter(({ doneOn }) => doneOn !== undefined).length;
  return `${done} of ${items.length} done${scores.length > 0 ? `, scores ${scores.join(', ')}` : ''}`;
};

export const TABLE_WORDS: { readonly [Table in TableName]: TableWords<RecordOf[Table]> } = {
  rounds: {
    name: 'Round',
    one: 'round',
    many: 'rounds',
    line: (round) => `${placeOf(round)}: ${round.holes} holes`,
  },
  putts: { name: 'Putt', one: 'putt', many: 'putts', line: puttWords },
  practice: {
    name: 'Practice set',
    one: 'practice set',
    many: 'practice sets',
    inBackup: 'practice',
    line: ({ day, holed, attempts, distance }, { units }) =>
      `${formatDay(day)}: ${holed} of ${attempts} from ${formatLength(distance, units)}`,
  },
  readSets: {
    name: 'Reading set',
    one: 'reading set',
    many: 'reading sets',
    line: ({ day, drillName, answers, size }) =>
      `${formatDay(day)}, ${drillName}: ${answers.length} of ${size} putts answered`,
  },
  drillResults: {
    name: 'Drill score',
    one: 'drill score',
    many: 'drill scores',
    inBackup: 'scores of drills',
    line: ({ day, drillId, score, ground }) =>
      `${formatDay(day)}, ${puttingDrill(drillId)?.name ?? drillId}, ${GROUND_WORDS[ground]}: ${score}`,
  },
  measurements: {
    name: 'Measurement',
    one: 'measurement',
    many: 'measurements',
    line: (measurement, { units }) => {
      const { what, value } = measurementLine(measurement, units);
      return `${formatDay(measurement.day)}, ${what}: ${value}`;
    },
  },
  plans: {
    name: 'Plan of a week',
    one: 'plan of a week',
    many: 'plans of weeks',
    line: ({ start, sessions }) =>
      `Week of ${formatDay(start)}: ${counted(sessions.length, 'session')}, ${doneWords(sessions)}`,
  },
};
