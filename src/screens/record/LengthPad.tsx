/** A length by one tap on a grid of usual ones, with fine steps beside it that also lead beyond the grid. */
import type { Hand } from '../../state/settings.ts';
import type { Units } from '../../text/format.ts';
import { formatTapped } from '../../text/record.ts';
import { fineStep, sameLength } from './distances.ts';
import { Picks } from './Picks.tsx';

export interface LengthPadProps {
  readonly legend: string;
  /** m */
  readonly value: number | undefined;
  readonly usual: readonly number[];
  /** From where a fine step goes before anything was tapped, m. */
  readonly middle: number;
  readonly units: Units;
  readonly hand: Hand;
  readonly onLength: (metres: number, fine: boolean) => void;
}

export const LengthPad = (props: LengthPadProps) => {
  const { legend, value, usual, middle, units, hand, onLength } = props;
  const step = (way: 1 | -1): void =>
    onLength(value === undefined ? middle : fineStep(value, way, units), true);
  const steps = (
    <div class="rec-steps">
      <button type="button" aria-label={`${legend}: a little less`} onClick={() => step(-1)}>
        −
      </button>
      <button type="button" aria-label={`${legend}: a little more`} onClick={() => step(1)}>
        +
      </button>
    </div>
  );
  const shown = <output class="rec-length">{value === undefined ? '…' : formatTapped(value, units)}</output>;
  return (
    <>
      <div class="rec-fine">{hand === 'right' ? [shown, steps] : [steps, shown]}</div>
      <Picks
        legend={legend}
        grid
        picks={usual.map((metres) => ({ value: metres, label: formatTapped(metres, units) }))}
        isChosen={(metres) => sameLength(metres, value)}
        onPick={(metres) => onLength(metres, false)}
      />
    </>
  );
};
