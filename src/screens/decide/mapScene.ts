/**
 * The one seam between this screen and whatever draws its map. `MapPanel` knows only `DecideMap`; the drawing behind it
 * can change here.
 */
import type { Roll } from '../../../sim/index.ts';
import { openPlainMap } from './plainMap.ts';

export interface DecideMap {
  /** Draws the putt as the signals have it now; run inside an effect, so whatever it reads it follows. */
  show(): void;
  /** Rolls the ball; tempo 1 is real speed, 0.5 half. Settles when the ball is down or at rest. */
  roll(which: 'die' | 'firm', roll: Roll, tempo: number): Promise<void>;
  destroy(): void;
}

export const openMap = async (host: HTMLElement): Promise<DecideMap> => openPlainMap(host);
