/**
 * Keeps the fit in step with the record shown: worked out in a worker, with progress, stopped when asked; the last one is kept
 * (state/fittedPlayer.ts), so that it stands there at once the next time. Leaves out: which record (question.ts), words.
 * A long record is looked at in part first, for an answer within seconds, unless an older one stands there; what that found is not kept.
 */
import { batch, computed, effect, signal } from '@preact/signals';
import { proxy } from 'comlink';
import { type FittedErrors, firstLook } from '../../../sim/index.ts';
import { type KeptFit, keepFit, keptFits } from '../../state/fittedPlayer.ts';
import { ownRecords } from '../../state/records.ts';
import { localDay } from '../../store/day.ts';
import type { RecordSizes } from '../../store/records.ts';
import { createLane } from '../../worker/client.ts';
import { asked, type FitQuestion } from './question.ts';

/** Share of the work done, 0 to 1; undefined: nothing is being worked out. */
export const work = signal<number | undefined>(undefined);
export const stopped = signal(false);
export const failure = signal<string | undefined>(undefined);

/** The record last found without a putt that counts. */
const empty = signal<{ readonly digits: string; readonly passedOver: number } | undefined>(undefined);

/** What a first look at a part of the record found. */
const looked = signal<KeptFit | undefined>(undefined);

/** The last fit of whose record is shown, however old; without one, the first look at this record. */
export const shown = computed(() => {
  const { source, digits } = asked.value ?? {};
  const known = keptFits.value.find((fit) => fit.source === source);
  return known ?? (looked.value?.digits === digits ? looked.value : undefined);
});
/** Shown is a first look at a part. */
export const isFirstLook = computed(() => shown.value !== undefined && shown.value === looked.value);
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

const lane = createLane({ interrupt: true });
/** The work that is wanted; what runs for another is not told of. */
let current: object | undefined;

const halt = (): void => {
  current = undefined;
  lane.cancel();
  work.value = undefined;
};

/** As the panel will count them (controls/PlayerPanel.tsx): the tables, with what cannot be read. The invented player's do not grow. */
const sizesNow = async ({ source, sizes }: FitQuestion): Promise<RecordSizes> => {
  if (source === 'demo') return sizes;
  try {
    return await (await ownRecords()).sizes();
  } catch {
    return sizes;
  }
};

const nothing = (): void => {};

const run = async (question: FitQuestion): Promise<void> => {
  const { source, record, usualPace, digits } = question;
  const mine = {};
  current = mine;
  work.value = 0;
  failure.value = undefined;
  const told = proxy((share: number) => {
    if (current === mine) work.value = share;
  });
  const keptOf = (fit: FittedErrors, sizes: RecordSizes): KeptFit => {
    const { status: _ok, correlations: _left, ...answer } = fit;
    return { source, day: localDay(Date.now()), digits, sizes, answer };
  };
  try {
    const sizes = await sizesNow(question);
    if (current !== mine) return;
    const part = shown.peek() === undefined ? firstLook(record) : undefined;
    if (part !== undefined) {
      const first = await lane.latest(async (engine) =>
        engine.fitErrors(part, { usualPace, taps: [] }, proxy(nothing)),
      );
      if (current !== mine) return;
      if (first?.status === 'ok') looked.value = keptOf(first, sizes);
    }
    const fit = await lane.latest(async (engine) => engine.fitErrors(record, { usualPace }, told));
    if (fit === undefined || current !== mine) return;
    current = undefined;
    batch(() => {
      work.value = undefined;
      if (fit.status === 'nothing') empty.value = { digits, passedOver: fit.passedOver };
      if (fit.status === 'ok') keepFit(keptOf(fit, sizes));
    });
  } catch (cause) {
    if (current !== mine) return;
    current = undefined;
    work.value = undefined;
    failure.value = `The engine could not answer: ${cause instanceof Error ? cause.message : String(cause)}. Load the page again to try once more; your records are as they were.`;
  }
};

export const stopWork = (): void => {
  halt();
  stopped.value = true;
};

export const resumeWork = (): void => {
  stopped.value = false;
  const question = asked.peek();
  if (question !== undefined) void run(question);
};

/** Starts following the record; returns the function that stops. */
export const followFit = (): (() => void) => {
  const stop = effect(() => {
    const question = asked.value;
    halt();
    stopped.value = false;
    failure.value = undefined;
    if (question === undefined) return;
    const known = keptFits
      .peek()
      .some(({ source, digits }) => source === question.source && digits === question.digits);
    if (!known) void run(question);
  });
  return () => {
    stop();
    halt();
  };
};
