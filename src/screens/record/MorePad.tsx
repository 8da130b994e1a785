/** What may be said of a putt beside where it was and where it went; folded away, and remembered open or closed. */
import type { PuttCircumstances } from '../../../sim/index.ts';
import { fullRecord } from '../../state/settings.ts';
import { PACES_MEANT, SLOPES_FELT } from '../../store/recordSchema.ts';
import { PACE_WORDS, SLOPE_WORDS } from '../../text/record.ts';
import { Picks } from './Picks.tsx';

type More = Pick<PuttCircumstances, 'slopeFelt' | 'paceMeant' | 'startedAsMeant' | 'paceAsMeant'>;

export interface MorePadProps {
  readonly more: More;
  readonly onMore: (more: More) => void;
}

const YES_NO = [
  { value: true, label: 'yes' },
  { value: false, label: 'no' },
];

export const MorePad = ({ more, onMore }: MorePadProps) => {
  const row = <Key extends keyof More>(
    key: Key,
    legend: string,
    picks: readonly { value: NonNullable<More[Key]>; label: string }[],
  ) => (
    <Picks
      legend={legend}
      showLegend
      picks={picks}
      isChosen={(value) => more[key] === value}
      onPick={(value) => onMore({ [key]: more[key] === value ? undefined : value })}
    />
  );
  return (
    <details
      class="rec-more"
      open={fullRecord.value}
      onToggle={(event) => {
        fullRecord.value = event.currentTarget.open;
      }}
    >
      <summary>More about this putt</summary>
      {row(
        'slopeFelt',
        'The slope',
        SLOPES_FELT.map((value) => ({ value, label: SLOPE_WORDS[value] })),
      )}
      {row(
        'paceMeant',
        'Pace meant',
        PACES_MEANT.map((value) => ({ value, label: PACE_WORDS[value] })),
      )}
      <div class="rec-pair">
        {row('startedAsMeant', 'Started as meant?', YES_NO)}
        {row('paceAsMeant', 'Pace as meant?', YES_NO)}
      </div>
    </details>
  );
};
