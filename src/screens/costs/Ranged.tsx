/** A number in a table with the range of the likely players below it; with one player the number alone. */
import type { Interval } from '../../../sim/index.ts';
import { partRange } from '../../text/costs.ts';

export interface RangedProps {
  readonly of: Interval;
  readonly write: (value: number) => string;
}

export const Ranged = ({ of, write }: RangedProps) => {
  const range = partRange(of, write);
  return (
    <>
      {write(of.value)}
      {range !== undefined && <small>{range}</small>}
    </>
  );
};
