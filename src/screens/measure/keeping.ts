/**
 * Measurements that were kept, on the page, in step with the device in any tab. Answers for: keeping one once, and saying what came of it.
 * Leaves out: the store (store/measurements.ts), what a kept carpet speed is used for (state/carpet.ts).
 */
import { ownDatabase, recordsLast } from '../../state/records.ts';
import { type AnyMeasured, toKeep } from '../../store/measurementSchema.ts';
import { type Measurements, measurementsOf } from '../../store/measurements.ts';

export const measurements = async (): Promise<Measurements> => measurementsOf((await ownDatabase()).database);

const REFUSED =
  'Not kept: the device refused to write (full or forbidden storage). Free some space and press again; what you entered stays here.';

const isCarpetSpeed = (measured: AnyMeasured): boolean =>
  (measured.by === 'timedRolls' || measured.by === 'rampRolls') && measured.ground === 'carpet';

/** Keeps it; answers what came of it, in words. */
export const keepMeasured = async (measured: AnyMeasured): Promise<string> => {
  try {
    const measurement = toKeep(measured, { id: crypto.randomUUID(), recordedAt: Date.now() });
    const done = await (await measurements()).keep(measurement);
    if (done === 'there') return 'Kept already: it is in the list of what you measured.';
    const where = recordsLast.value
      ? 'Kept, with today’s date.'
      : 'Kept on this page only, until you close it.';
    return isCarpetSpeed(measured)
      ? `${where} Practise and The week now reckon with it for your carpet.`
      : where;
  } catch {
    return REFUSED;
  }
};
