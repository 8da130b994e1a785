/** What the screen shows of the fit at hand: facts for sentences, table and chart. Leaves out: the fit (work.ts), words (text/errors.ts). */
import { computed } from '@preact/signals';
import { ERRORS } from '../../../sim/index.ts';
import { type ErrorRow, placeErrors } from '../../charts/errorsData.ts';
import { bestTap } from '../../text/errors.ts';
import { ERROR_NAMES, errorWords, shownError, unitOfError } from '../../text/player.ts';
import { shown } from './work.ts';

/** Putts that count, practice putts too. */
export const puttsOf = ({ putts, practicePutts }: { putts: number; practicePutts: number }): number =>
  putts + practicePutts;

export const view = computed(() => {
  const fit = shown.value;
  if (fit === undefined) return undefined;
  const { answer } = fit;
  // A habit of pace that cannot be told from the pace meant is no error to draw.
  const drawn = ERRORS.filter((name) => name !== 'paceBias' || answer.pace.intentKnown);
  const rows = drawn.map((name): ErrorRow => {
    const { median, range90, before90 } = answer.errors[name];
    const of = (value: number): number => shownError(name, value);
    return {
      name: ERROR_NAMES[name],
      value: of(median),
      low: of(range90.low),
      high: of(range90.high),
      beforeLow: of(before90.low),
      beforeHigh: of(before90.high),
      unit: unitOfError(name),
      note: errorWords(name, median),
    };
  });
  return {
    fit,
    answer,
    putts: puttsOf(answer),
    invented: fit.source === 'demo',
    tap: bestTap(answer.tellApart.taps),
    drawn,
    rows,
    plot: placeErrors(rows),
  };
});
export type ErrorsView = NonNullable<typeof view.value>;
