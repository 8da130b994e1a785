/**
 * Which record is fitted, and what tells one state of it from another. Pure but for the signals. Leaves out: the fit (work.ts), what is
 * said of it (text/errors.ts).
 */
import { computed } from '@preact/signals';
import { type FitRecord, type MeasuredStrokes, strokesIn, strokesOfMeasured } from '../../../sim/index.ts';
import type { FitSource } from '../../state/fittedPlayer.ts';
import { meantPace } from '../../state/settings.ts';
import { shownRecords, shownSource } from '../../state/shownRecords.ts';
import { crc32Of } from '../../store/crc32.ts';
import type { AllRecords, RecordSizes } from '../../store/records.ts';

export interface FitQuestion {
  readonly source: FitSource;
  readonly record: FitRecord;
  /** Asked for once, m past; undefined: not said. */
  readonly usualPace: number | undefined;
  /** Of what can be read. */
  readonly sizes: RecordSizes;
  /** Balls measured through gates and to targets. */
  readonly strokes: number;
  /** The same digits, the same record: a corrected putt counts as another one. */
  readonly digits: string;
}

/** What was measured of start line and pace. */
const strokesOf = ({ measured }: Pick<AllRecords, 'measured'>): MeasuredStrokes =>
  strokesOfMeasured(measured.flatMap((one) => (one.by === 'gates' || one.by === 'paceRolls' ? [one] : [])));

/**
 * Of a round nothing counts but its green speed: a round begun without one changes no fit.
 * @param usualPace m past; undefined: not said
 */
export const digitsOf = ({ putts, practice, rounds, measured }: AllRecords, usualPace?: number): string =>
  crc32Of(
    JSON.stringify([
      putts,
      practice,
      rounds.flatMap(({ id, greenSpeed }) => (greenSpeed === undefined ? [] : [[id, greenSpeed]])),
      strokesOf({ measured }),
      // Fits of before stay those of their record where nothing was said.
      ...(usualPace === undefined ? [] : [usualPace]),
    ]),
  );

/** undefined: the records are not read yet. */
export const asked = computed((): FitQuestion | undefined => {
  const all = shownRecords.value;
  if (all === undefined) return undefined;
  const { putts, practice, rounds } = all;
  const strokes = strokesOf(all);
  const source = shownSource.value;
  // The invented player was not asked.
  const said = source === 'own' ? meantPace.value : undefined;
  const usualPace = said === 'skipped' ? undefined : said;
  return {
    source,
    usualPace,
    record: { putts, sets: practice, rounds, strokes },
    sizes: { putts: putts.length, sets: practice.length },
    strokes: strokesIn(strokes),
    digits: digitsOf(all, usualPace),
  };
});

/** Why putts were passed over. */
export interface PassedOver {
  readonly conceded: number;
  readonly offGreen: number;
  /** Nearer or farther than a fit can use. */
  readonly tooNearOrFar: number;
}

/** @param passedOver all of them, by the fit */
export const passedOverBy = ({ putts }: FitRecord, passedOver: number): PassedOver => {
  const of = (which: 'conceded' | 'offGreen'): number => putts.filter(({ kind }) => kind === which).length;
  const [conceded, offGreen] = [of('conceded'), of('offGreen')];
  return { conceded, offGreen, tooNearOrFar: Math.max(0, passedOver - conceded - offGreen) };
};
