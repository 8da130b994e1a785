/** Which hand holds the telephone: the main buttons lie under its thumb. */
import { Choice } from '../../controls/Choice.tsx';
import { hand } from '../../state/settings.ts';

export const HandChoice = () => (
  <Choice
    legend="Thumb"
    name="hand"
    showLegend
    value={hand.value}
    options={[
      { value: 'left', label: 'left' },
      { value: 'right', label: 'right' },
    ]}
    onChange={(value) => {
      hand.value = value;
    }}
  />
);
