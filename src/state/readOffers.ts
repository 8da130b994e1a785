/** What can be started on the reading screen: the sets that are not drills, and the drills. Ids are kept in records for ever. */
import type { ReadDrill, ReadTask } from '../../sim/index.ts';

export interface OwnSet {
  readonly id: 'adaptive' | 'die-or-firm' | 'what-slope';
  readonly name: string;
  readonly purpose: string;
  readonly task: ReadTask;
}

export const ADAPTIVE_SET: OwnSet = {
  id: 'adaptive',
  name: 'Adaptive set',
  purpose:
    'Ten putts chosen as you go: more of the kinds you read worst or that are least known, mixed, and about as hard as lets seven in ten aims count.',
  task: 'aim',
};
export const PACE_SET: OwnSet = {
  id: 'die-or-firm',
  name: 'Die or firm here?',
  purpose:
    'Which of two paces takes fewer putts with your errors? Scored by the putts that your choice costs.',
  task: 'paces',
};
export const SLOPE_SET: OwnSet = {
  id: 'what-slope',
  name: 'What slope is this?',
  purpose: 'How steep is the ground, and how much of it lies along your line? Scored by sign and spread.',
  task: 'slope',
};

export type Offer = ReadDrill | OwnSet;
/** A set all of whose putts are drawn at the start. */
export type FixedOffer = ReadDrill | (OwnSet & { readonly id: 'die-or-firm' | 'what-slope' });

export const isAdaptive = ({ id }: { readonly id: string }): boolean => id === ADAPTIVE_SET.id;
export const taskOf = (offer: Offer): ReadTask => ('task' in offer ? offer.task : 'aim');
