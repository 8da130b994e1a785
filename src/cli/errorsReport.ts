/**
 * The report of a player's errors from a backup of their records on standard input. Answers for: reading it, the page. Leaves out: the fit
 * (sim/evidence/fit), its words (text/errors.ts), shapes of records (store).
 */
import { ERRORS, type ErrorName, type ErrorRange, fitErrors, strokesOfMeasured } from '../../sim/index.ts';
import { readBackup } from '../store/backup.ts';
import { localDay } from '../store/day.ts';
import { passAll } from '../store/gate.ts';
import { measuredOf } from '../store/measurementSchema.ts';
import { type TableName, tableOf } from '../store/tables.ts';
import { atOnce } from '../store/work.ts';
import {
  ASSUMED,
  bestTap,
  errorRangeWords,
  errorsHeadline,
  ROUGH_WORDS,
  rolledPastWords,
  tapWords,
  toldWords,
} from '../text/errors.ts';
import { ERROR_NAMES, errorWords } from '../text/player.ts';
import { columns, wrap } from './layout.ts';
import type { Checked } from './request.ts';

/** Habits are thought of as going either way as far: said once, the row fits the page. */
const beforeWords = (name: ErrorName, range: ErrorRange): string =>
  name.endsWith('Sd')
    ? errorRangeWords(name, range)
    : `${errorWords(name, range.high).replace(/ .*/, '')} either way`;

const refuse = (problem: string): Checked<string> => ({ ok: false, problem });

/** @param text a backup file */
export const errorsPage = (text: string): Checked<string> => {
  if (text.trim() === '')
    return refuse(
      'got nothing on standard input, expected a backup made on the screen “Your data”. Send the file in: errors < backup.json',
    );
  const read = atOnce(readBackup(text, { dayOf: localDay }));
  if (!read.ok) return refuse(read.problem);
  const { found } = read.file;
  const of = <Table extends TableName>(table: Table) =>
    passAll(
      tableOf(table).schema,
      found[table].map((one) => one.found),
    );
  const [rounds, putts, practice, measured] = [of('rounds'), of('putts'), of('practice'), of('measurements')];
  const unreadable = [rounds, putts, practice, measured].reduce((sum, table) => sum + table.unreadable, 0);
  const strokes = strokesOfMeasured(
    measured.kept
      .map(measuredOf)
      .flatMap((one) => (one.by === 'gates' || one.by === 'paceRolls' ? [one] : [])),
  );
  const fit = fitErrors({ putts: putts.kept, sets: practice.kept, rounds: rounds.kept, strokes });
  if (fit.status !== 'ok')
    return refuse(
      `got a backup without a putt that counts (${putts.kept.length} putts in all), expected some that were struck on a green. Record putts first.`,
    );
  const counted = fit.putts + fit.practicePutts;
  const { readBias, errors, pace, tellApart } = fit;
  // Which pace was meant is unknown: then it is not told from the habit, and only their sum is said.
  const shown = ERRORS.filter((name) => name !== 'paceBias' || pace.intentKnown);
  const rows = shown.map((name) => [
    ERROR_NAMES[name],
    errorWords(name, errors[name].median),
    errorRangeWords(name, errors[name].range90),
    beforeWords(name, errors[name].before90),
  ]);
  const told = shown.map((name) => `${ERROR_NAMES[name].toLowerCase()} ${toldWords(errors[name])}`);
  const notes = [
    `How much of it the record says: ${told.join('; ')}.`,
    ...(pace.intentKnown ? [] : [rolledPastWords(pace.rolledPast, 'imperial')]),
    tapWords(bestTap(tellApart.taps)),
    ...(fit.rough ? [ROUGH_WORDS] : []),
    ...(unreadable > 0 ? [`Left out: ${unreadable} records that this version cannot read.`] : []),
    ...ASSUMED,
  ];
  const page = [
    wrap(errorsHeadline({ readBias, error: errors.readBias, putts: counted, invented: false })),
    wrap(
      `${fit.putts} putts of rounds, ${fit.practicePutts} practice putts, ${fit.measuredStrokes} balls through gates and to targets; ${fit.passedOver} putts passed over. Ranges hold nine chances in ten.`,
    ),
    columns([['error', 'middle', 'range', 'before the record'], ...rows]),
    ...notes.map((note) => wrap(note)),
  ];
  return { ok: true, value: `${page.join('\n\n')}\n` };
};
