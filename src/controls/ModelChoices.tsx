/** What of the ball the model counts: which balls drop, and the skid off the putter. Kept for every visit. */
import type { OfferedCapture } from '../../sim/index.ts';
import { capture, skid } from '../state/settings.ts';
import { Choice } from './Choice.tsx';

const CAPTURE_NAMES: readonly { value: OfferedCapture; label: string }[] = [
  { value: 'rim', label: 'real rim' },
  { value: 'simple', label: 'simple rule' },
];

const CAPTURE_WORDS: Readonly<Record<OfferedCapture, string>> = {
  rim: 'A ball meets the edge as a rigid ball does: it drops, or lips out another way and slower.',
  simple:
    'A published rule of thumb: 1.63 m/s drops dead centre, less toward the edge. What does not drop rolls on as if nothing were there.',
};

export const ModelChoices = () => (
  <>
    <Choice
      legend="The hole"
      name="capture"
      showLegend
      value={capture.value}
      options={CAPTURE_NAMES}
      onChange={(value) => {
        capture.value = value;
      }}
    />
    <p class="hint">{CAPTURE_WORDS[capture.value]}</p>
    <label class="tick">
      <input
        type="checkbox"
        checked={skid.value}
        aria-describedby="skid-hint"
        onChange={(event) => {
          skid.value = event.currentTarget.checked;
        }}
      />
      <span>Count the skid</span>
    </label>
    <p class="hint" id="skid-hint">
      Off the putter a ball slides before it rolls: about the first eighth of a putt on a 10 ft green.
      Counting it, the ball has to leave nearly a third faster, and the putt breaks a few per cent less. Which
      pace is best hardly changes.
    </p>
  </>
);
