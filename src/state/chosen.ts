/** Whom a person plays as, as settings keep it. */
import type { Player, PlayerOrigin } from '../../sim/index.ts';

/** What the person chose, and the numbers it came to then: they stay when what they came from is gone. */
export interface Chosen {
  readonly origin: PlayerOrigin;
  readonly player: Player;
}
