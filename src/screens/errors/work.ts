/**
 * Keeps the fit in step with the record shown: worked out in a worker, with progress, stopped when asked; the last one is kept
 * (state/fittedPlayer.ts), so that it stands there at once the next time. Leaves out: which record (question.ts), words.
 * A long record is looked at in part first, for an answer within seconds, unless an older one stands there; what that found is not kept.
 */
import { computed, signal } from '@preact/signals';
import { proxy } from 'comlink';
import { type FittedErrors, firstLook } from '../../../sim/index.ts';
import { type KeptFit, keepFit, keptFits } from '../../state/fittedPlayer.ts';
import { createJob } from '../../state/job.ts';
import { ownRecords } from '../../state/records.ts';
import { localDay } from '../../store/day.ts';
import type { RecordSizes } from '../../store/records.ts';
import { asked, type FitQuestion } from './question.ts';

/** The record last found without a putt that counts. */
const empty = signal<{ readonly digits: string; readonly passedOver: number } | undefined>(undefined);

/** As the panel will count them (controls/PlayerPanel.tsx): the tables, with what cannot be read. The invented player's do not grow. */
const sizesNow = async ({ source, sizes }: FitQuestion): Promise<RecordSizes> => {
  if (source === 'demo') return sizes;
  try {
    return await (await ownRecords()).sizes();
  } catch {
    return sizes;
  }
};

/** The last whole fit of whose record is shown, however old. */
const older = computed(() => keptFits.value.find((fit) => fit.source === asked.value?.source));

const nothing = (): void => {};

export const fits = createJob<FitQuestion, KeptFit>(asked, {
  keyOf: ({ source, digits }) => `${source} ${digits}`,
  isKnown: ({ source, digits }) =>
    keptFits.peek().some((fit) => fit.source === source && fit.digits === digits),
  async ask(question, { lane, told, first }) {
    const { source, record, usualPace, digits } = question;
    const sizes = await sizesNow(question);
    const keptOf = (fit: FittedErrors): KeptFit => {
      const { status: _ok, correlations: _left, ...answer } = fit;
      return { source, day: localDay(Date.now()), digits, sizes, answer };
    };
    const part = older.peek() === undefined ? firstLook(record) : undefined;
    if (part !== undefined) {
      const look = await lane.latest(async (engine) =>
        engine.fitErrors(part, { usualPace, taps: [] }, proxy(nothing)),
      );
      if (look === undefined) return undefined;
      if (look.status === 'ok') first(keptOf(look));
    }
    const fit = await lane.latest(async (engine) => engine.fitErrors(record, { usualPace }, proxy(told)));
    if (fit?.status === 'nothing') empty.value = { digits, passedOver: fit.passedOver };
    if (fit?.status !== 'ok') return undefined;
    const found = keptOf(fit);
    keepFit(found);
    return found;
  },
  interrupt: true,
  // They are kept on the device.
  most: 0,
  mend: 'Load the page again to try once more; your records are as they were.',
});

/** The last fit; without one, the first look at this record. */
export const shown = computed(() => {
  const look = fits.shown.value?.found;
  return older.value ?? (look?.digits === asked.value?.digits ? look : undefined);
});
/** Shown is a first look at a part. */
export const isFirstLook = computed(() => older.value === undefined && shown.value !== undefined);
/** Putts passed over of a record in which none counts. */
export const nothingCounts = computed(() =>
  empty.value !== undefined && empty.value.digits === asked.value?.digits
    ? empty.value.passedOver
    : undefined,
);
/** The fit shown is of another state of the record, or there is none yet. */
export const behind = computed(
  () => asked.value !== undefined && (isFirstLook.value || shown.value?.digits !== asked.value.digits),
);
