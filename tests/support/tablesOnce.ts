/**
 * Tables of next putts made once for all requests of a test file that ask for the same: most of the time of a request with odds.
 * Leaves out: how a table is made.
 */
import type { NextPutts, Player, Putt } from '../../sim/index.ts';

type Maker<Rest extends readonly unknown[]> = (putt: Putt, player: Player, ...rest: Rest) => NextPutts;

/** A maker that remembers what it made. On a plane neither ball nor hole matter (prepareNextPutts). */
export function tablesOnce<Rest extends readonly unknown[]>(make: Maker<Rest>): Maker<Rest> {
  const made = new Map<string, NextPutts>();
  return (putt, player, ...rest) => {
    const { ball: _ball, hole, ...ground } = putt;
    const key = JSON.stringify([ground, putt.surface.kind === 'plane' ? undefined : hole, player, rest]);
    const table = made.get(key) ?? make(putt, player, ...rest);
    made.set(key, table);
    return table;
  };
}
