/**
 * A part of a long record, for a first answer within seconds. Answers for: which part, and whether one is worth it. Leaves out: fitting
 * it (fit-errors.ts): its ranges are as wide as so few putts leave them, and hold the truth as often.
 */
import { counts, type FitRecord } from './outcomes.ts';
import { spreadSample } from './tell-apart.ts';

/** Putts of a first look: 2 s of work. */
const LOOKED_AT = 120;
/** A record so many times as long takes long enough for a first look to be worth its while. */
const LONGER = 2.5;

/** Putts evenly through the record, whole rounds or not; practice sets left out. @returns undefined where the whole is as quick */
export function firstLook(record: FitRecord): FitRecord | undefined {
  const putts = record.putts.filter(counts);
  if (putts.length < LONGER * LOOKED_AT) return undefined;
  const { rounds, strokes } = record;
  return {
    putts: spreadSample(putts, LOOKED_AT),
    ...(rounds && { rounds }),
    ...(strokes && { strokes }),
  };
}
