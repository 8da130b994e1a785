/** All read drills, checked as they load, so that a bad file fails before anyone is asked anything. */
import type { ReadDrill } from '../sim/index.ts';
import dieAndFirm from './die-and-firm.json' with { type: 'json' };
import leftAndRight from './left-and-right.json' with { type: 'json' };
import longGreens from './long-greens.json' with { type: 'json' };
import longLag from './long-lag.json' with { type: 'json' };
import pinHighSidehill from './pin-high-sidehill.json' with { type: 'json' };
import { readDrillSchema } from './schema.ts';
import shortTesters from './short-testers.json' with { type: 'json' };
import threeGreenSpeeds from './three-green-speeds.json' with { type: 'json' };
import upAndDownPairs from './up-and-down-pairs.json' with { type: 'json' };
import wholeGreens from './whole-greens.json' with { type: 'json' };

/** In the order they are offered: from the plainest to the hardest. */
export const READ_DRILLS: readonly ReadDrill[] = [
  pinHighSidehill,
  leftAndRight,
  upAndDownPairs,
  threeGreenSpeeds,
  dieAndFirm,
  longLag,
  shortTesters,
  wholeGreens,
  longGreens,
].map((drill) => readDrillSchema.parse(drill));

/** The drill of a record; undefined when a later version no longer has it. */
export const readDrill = (id: string): ReadDrill | undefined => READ_DRILLS.find((drill) => drill.id === id);
