/**
 * Changes of a round on their way to the device: one at a time, and why one did not get there. Leaves out: what is changed
 * (recorder.ts). What the records say while a change is under way is older than the change, and waits until it is through.
 */
import { type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { Records, RoundInHand, Written } from '../../store/records.ts';

/** Why the last change is not on the device. */
export interface Refusal {
  /** full, forbidden: the device did not write; elsewhere: another tab has changed the hole or the round since. */
  readonly why: 'full' | 'forbidden' | 'elsewhere';
  /** The putt on the form, or something else about the hole. */
  readonly of: 'putt' | 'hole';
}

export interface Writing {
  readonly saving: ReadonlySignal<boolean>;
  readonly refusal: Signal<Refusal | undefined>;
  /** Whatever keeps the change from the device is said, and `then` is not called. Does nothing while another is under way. */
  write(of: Refusal['of'], change: (records: Records) => Promise<Written>, then: () => void): Promise<void>;
  /** Whether what the records say now has to wait; `follow` gets it then. */
  later(found: RoundInHand | undefined): boolean;
}

const isFull = (problem: unknown): boolean => /quota/i.test(String(problem));

/** @param round the one in hand; shown as the device has it when another tab has changed it */
export const createWriting = (
  world: { records(): Promise<Records> },
  round: Signal<RoundInHand | undefined>,
  follow: (found: RoundInHand | undefined) => void,
): Writing => {
  const saving = signal(false);
  const refusal = signal<Refusal | undefined>(undefined);
  /** What the records said while a write was under way. */
  let missed: { found: RoundInHand | undefined } | undefined;

  /** One change at a time; whatever keeps it from the device is said, and nothing of the form is touched then. */
  const write = async (
    of: Refusal['of'],
    change: (records: Records) => Promise<Written>,
    then: () => void,
  ): Promise<void> => {
    if (saving.peek()) return;
    saving.value = true;
    try {
      const records = await world.records();
      const written = await change(records);
      if (written === 'changedElsewhere') {
        const id = round.peek()?.round.id;
        const found = id === undefined ? undefined : await records.round(id);
        if (found) round.value = found;
        refusal.value = { why: 'elsewhere', of };
      } else {
        // What was said meanwhile is older than this; the write itself is about to be told.
        missed = undefined;
        refusal.value = undefined;
        then();
      }
    } catch (problem) {
      refusal.value = { why: isFull(problem) ? 'full' : 'forbidden', of };
    } finally {
      saving.value = false;
      if (missed) follow(missed.found);
    }
  };

  const later = (found: RoundInHand | undefined): boolean => {
    missed = saving.peek() ? { found } : undefined;
    return missed !== undefined;
  };
  return { saving, refusal, write, later };
};
