/** What the person wants to look at, and the question that makes of it for the engine. Pure. Leaves out: the controls (Filters.tsx). */
import type { BreakWay, ChosenPutts, Climb, PaceMeant, PuttFilter } from '../../../sim/index.ts';

export const DATE_CHOICES = ['all', 'year', 'months', 'own'] as const;
export type DateChoice = (typeof DATE_CHOICES)[number];

export interface ReviewFilter {
  /** all: every day; year: this calendar year; months: the last three; own: from and to. */
  readonly dates: DateChoice;
  /** First and last day for 'own', YYYY-MM-DD, both included; empty: no limit. */
  readonly from: string;
  readonly to: string;
  readonly kind: 'rounds' | 'practice' | 'both';
  readonly climb: Climb | 'any';
  readonly breaks: BreakWay | 'any';
  readonly paceMeant: PaceMeant | 'any';
}

export const EVERYTHING: ReviewFilter = {
  dates: 'all',
  from: '',
  to: '',
  kind: 'rounds',
  climb: 'any',
  breaks: 'any',
  paceMeant: 'any',
};

/** The same day some months before, or that month's last. @param day YYYY-MM-DD */
export const monthsBefore = (day: string, months: number): string => {
  const [year, month, date] = day.split('-').map(Number);
  const last = new Date(Date.UTC(year, month - months, 0)).getUTCDate();
  return new Date(Date.UTC(year, month - 1 - months, Math.min(date, last))).toISOString().slice(0, 10);
};

interface Days {
  readonly from?: string;
  readonly to?: string;
}

/** @param today YYYY-MM-DD */
export const daysOf = ({ dates, from, to }: ReviewFilter, today: string): Days => {
  if (dates === 'year') return { from: `${today.slice(0, 4)}-01-01`, to: `${today.slice(0, 4)}-12-31` };
  if (dates === 'months') return { from: monthsBefore(today, 3) };
  if (dates === 'own') return { ...(from && { from }), ...(to && { to }) };
  return {};
};

const known = <Value extends string>(value: Value | 'any'): Value | undefined =>
  value === 'any' ? undefined : value;

export const puttFilterOf = (filter: ReviewFilter, today: string): PuttFilter => ({
  ...daysOf(filter, today),
  kind: filter.kind,
  climb: known(filter.climb),
  breaks: known(filter.breaks),
  paceMeant: known(filter.paceMeant),
});

/** Putts that passed, rounds and practice together. */
export const chosenCount = ({ struck, sets }: ChosenPutts): number =>
  struck.length + sets.reduce((sum, { attempts }) => sum + attempts, 0);
