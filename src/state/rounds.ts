/**
 * Beginning and ending a round, from any screen that offers it. Answers for: the mark that holds back advice going up before a
 * round is written and coming down after it ended. Leaves out: its putts (screens/record).
 */
import { signal } from '@preact/signals';
import type { RecordedRound } from '../../sim/index.ts';
import { localDay } from '../store/day.ts';
import { askToPersist } from '../store/persistence.ts';
import type { RoundInHand } from '../store/records.ts';
import { markNoRound, markRoundOpen, ownRecords } from './records.ts';

/** The round that was ended last, in this visit. */
export const endedRound = signal<RoundInHand | undefined>(undefined);

export type RoundChange = 'done' | 'changedElsewhere' | 'refused';

/** What a person may say of a round before it begins. */
export type RoundStart = Pick<RecordedRound, 'holes' | 'course' | 'greenSpeed'>;

export const startRound = async ({ holes, course, greenSpeed }: RoundStart): Promise<RoundChange> => {
  const now = Date.now();
  markRoundOpen();
  try {
    const written = await (await ownRecords()).startRound({
      id: crypto.randomUUID(),
      day: localDay(now),
      startedAt: now,
      holes,
      ...(course === undefined ? {} : { course }),
      ...(greenSpeed === undefined ? {} : { greenSpeed }),
      withoutPutt: [],
    });
    if (written !== 'written') return written;
    endedRound.value = undefined;
    // From here on there is something to lose; a browser that asks the person does so at their own tap.
    void askToPersist();
    return 'done';
  } catch {
    markNoRound();
    return 'refused';
  }
};

/** @param inHand as it is on the screen: a round changed elsewhere meanwhile stays open */
export const endRound = async (inHand: RoundInHand): Promise<RoundChange> => {
  const { round } = inHand;
  try {
    const written = await (await ownRecords()).changeRound(round, { ...round, endedAt: Date.now() });
    if (written !== 'written') return written;
    endedRound.value = inHand;
    return 'done';
  } catch {
    return 'refused';
  }
};

/** Opens an ended round again; 'changedElsewhere' when it is gone, open already, or another is open. */
export const reopenRound = async (id: string): Promise<RoundChange> => {
  try {
    const records = await ownRecords();
    const found = await records.round(id);
    if (found === undefined || (await records.openRound()) !== undefined) return 'changedElsewhere';
    const { endedAt: _ended, ...open } = found.round;
    markRoundOpen();
    const written = await records.changeRound(found.round, open);
    if (written !== 'written') {
      markNoRound();
      return written;
    }
    endedRound.value = undefined;
    return 'done';
  } catch {
    markNoRound();
    return 'refused';
  }
};
