/** What slope is this: the two slopes as sliders, and the commitment. */
import type { Slopes } from '../../../sim/index.ts';
import { Slider } from '../../controls/Slider.tsx';
import { formatSlope } from '../../text/format.ts';
import type { Asked } from './asked.ts';
import { alongWords } from './slopeWords.ts';

/** Steeper than any ground that is asked about, rise over run. */
const STEEPEST = 0.06;
/** As fine as a level on the ground reads, percent. */
const STEP = 0.1;

export interface SlopePanelProps {
  readonly asked: Asked;
  readonly guess: Slopes;
  readonly onGuess: (guess: Slopes) => void;
  readonly onCommit: () => void;
  readonly onLeave: () => void;
}

export const SlopePanel = ({ guess, onGuess, onCommit, onLeave }: SlopePanelProps) => (
  <form
    class="card read-panel"
    aria-label="Your slopes"
    onSubmit={(event) => {
      event.preventDefault();
      onCommit();
    }}
  >
    <Slider
      id="read-slope-total"
      label="Slope of the ground"
      hint="Where it is steepest, whichever way you putt."
      min={0}
      max={STEEPEST * 100}
      step={STEP}
      value={guess.total * 100}
      shown={formatSlope(guess.total)}
      onValue={(percent) => {
        const total = percent / 100;
        // Along a line the ground is never steeper than it is.
        onGuess({ total, along: Math.max(-total, Math.min(total, guess.along)) });
      }}
    />
    <Slider
      id="read-slope-along"
      label="Of it, along your line"
      hint="Left of the middle downhill to the hole, right of it uphill."
      min={-STEEPEST * 100}
      max={STEEPEST * 100}
      step={STEP}
      value={guess.along * 100}
      shown={alongWords(guess.along)}
      onValue={(percent) => {
        const along = percent / 100;
        onGuess({ total: Math.max(guess.total, Math.abs(along)), along });
      }}
    />
    <p class="read-actions">
      <button type="submit" class="read-main">
        Commit to these slopes
      </button>
      <button type="button" class="plain" onClick={onLeave}>
        Leave the set
      </button>
    </p>
    <p class="hint">
      The ground is even. Strokes run downhill from their thick end and are longer where it is steeper. Enter
      on a slider commits.
    </p>
  </form>
);
