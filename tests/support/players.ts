/**
 * Whose errors a page begins with, as the app keeps them in localStorage: few players, where a test is not about who it may be. The
 * player a visitor begins with stands for a family, and the engine plays all of it.
 */
import { DEFAULT_PLAYER } from '../../src/state/settings.ts';
import { aFit } from './aFit.ts';

/** The middle of that family, set by hand: one player. */
export const ONE_PLAYER = {
  'borrow.settings.2': { chosen: { origin: { kind: 'byHand' }, player: DEFAULT_PLAYER } },
};

const fit = aFit();
const [first] = fit.answer.players;
/**
 * A fit to an own record; `fit:own` among the choices of "Start from". Who it may be differs in the start line only: each error that
 * differs takes the costs more players to play.
 */
export const A_FIT = {
  'borrow.fit.3': {
    version: 3,
    fits: [
      aFit({
        answer: { ...fit.answer, players: fit.answer.players.map(({ lineSd }) => ({ ...first, lineSd })) },
      }),
    ],
  },
};
