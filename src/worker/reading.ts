/** The reading screen's worker: draws sets of putts and works out what an aim costs. A switch that calls sim. */
import { expose } from 'comlink';
import {
  holedShare,
  makeReadSet,
  type Player,
  type Putt,
  type Question,
  type ReadDrill,
} from '../../sim/index.ts';

export interface AimCost {
  /** Chances of holing from the person's aim and from the true one, without any error of reading, 0 to 1. */
  readonly holedAtAim: number;
  readonly holedAtTrue: number;
}

export interface ReadingWorker {
  /** Throws when the drill holds no putt that can be asked. */
  makeSet(drill: ReadDrill, seed: string): Question[];
  /** @param pace m past @param aim m, positive left */
  costOf(putt: Putt, pace: number, player: Player, aim: number): AimCost;
}

const worker: ReadingWorker = {
  makeSet: makeReadSet,
  costOf: (putt, pace, player, aim) => ({
    holedAtAim: holedShare(putt, pace, player, aim),
    holedAtTrue: holedShare(putt, pace, player),
  }),
};

expose(worker);
