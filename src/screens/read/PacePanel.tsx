/** Die or firm: the two ways to commit. */
import type { PaceChoice } from '../../../sim/index.ts';
import { formatShort, type Units } from '../../text/format.ts';
import type { Asked } from './asked.ts';
import { PaceKey } from './MapKey.tsx';

export interface PacePanelProps {
  readonly asked: Asked;
  readonly units: Units;
  readonly onChoose: (chosen: PaceChoice) => void;
  readonly onLeave: () => void;
}

export const PacePanel = ({ asked, units, onChoose, onLeave }: PacePanelProps) => {
  const { pace, firmPace = pace } = asked.question;
  return (
    <section class="card read-panel" aria-label="Your pace">
      <p class="read-actions">
        <button type="button" class="read-pace" onClick={() => onChoose('die')}>
          <PaceKey pace="die" /> Die, {formatShort(pace, units)} past
        </button>
        <button type="button" class="read-pace" onClick={() => onChoose('firm')}>
          <PaceKey pace="firm" /> Firm, {formatShort(firmPace, units)} past
        </button>
        <button type="button" class="plain" onClick={onLeave}>
          Leave the set
        </button>
      </p>
      <p class="hint">
        Which of the two takes fewer putts, all told, with your errors of line, pace and reading from the
        deciding screen? A choice commits. Where the two are nearly alike, either costs next to nothing.
        Strokes run downhill from their thick end and are longer where it is steeper.
      </p>
    </section>
  );
};
