/** Measurements on this device: kept, listed, taken back. Leaves out: the shape (measurementSchema.ts), opening (database.ts). */
import type { Database } from './database.ts';
import { mustPass, passAll } from './gate.ts';
import { type Listed, listed } from './lists.ts';
import { type KeptMeasurement, measurementSchema } from './measurementSchema.ts';
import { same } from './same.ts';

export interface Measurements {
  /** Resolves once the store has it; 'there' when the same entries were kept that day already. Rejects when the device refuses. */
  keep(measurement: KeptMeasurement): Promise<'written' | 'there'>;
  remove(id: string): Promise<void>;
  /** Newest first. */
  list(): Promise<Listed<KeptMeasurement>>;
}

/** The same entries of the same day, whenever and under whichever id they were kept. */
const isTwin = (one: KeptMeasurement, other: KeptMeasurement): boolean =>
  same({ ...one, id: '', recordedAt: 0 }, { ...other, id: '', recordedAt: 0 });

export const measurementsOf = (database: Database): Measurements => ({
  async keep(measurement) {
    const good = mustPass(measurementSchema, measurement);
    // One transaction: another tab cannot keep the same one between our look and our write.
    return database.transaction('rw', database.measurements, async () => {
      const ofDay = await database.measurements.where('day').equals(good.day).toArray();
      if (passAll(measurementSchema, ofDay).kept.some((one) => isTwin(one, good))) return 'there';
      await database.measurements.add(good);
      return 'written';
    });
  },
  remove: (id) => database.measurements.delete(id),
  list: () => listed(database, 'measurements'),
});
