/** Recorded putts for tests of what records tell. */
import type { RecordedMiss, RecordedPutt } from '../../../sim/index.ts';

/** A missed putt of kind 'putt' from 15 ft with a leave of half a metre; what is given stands instead. */
export function recorded(
  given: Partial<RecordedPutt> & { readonly way?: Partial<RecordedMiss> } = {},
): RecordedPutt {
  const { way, ...fields } = given;
  const putt = {
    id: 'p',
    roundId: 'r',
    hole: 1,
    stroke: 1,
    kind: 'putt',
    distance: 4.572,
    holed: false,
    recordedAt: 0,
    ...fields,
  } as const;
  return putt.holed ? putt : { ...putt, miss: { leave: 0.5, ...way } };
}
