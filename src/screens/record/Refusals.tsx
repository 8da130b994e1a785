/** Why something tapped is not on the device: what was got, what was expected, what to do. Nothing is dropped unasked. */
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type { RecordedPutt } from '../../../sim/index.ts';
import type { Units } from '../../text/format.ts';
import { puttWords } from '../../text/record.ts';
import { isHoledOut } from './hole.ts';
import type { Refusal } from './writing.ts';

export interface RefusedProps {
  readonly refusal: Refusal;
  readonly hole: number;
  /** The hole as it is on the device. */
  readonly onDevice: readonly RecordedPutt[];
  /** The putt on the form is one of them. */
  readonly corrects: boolean;
  readonly units: Units;
  readonly onSave: (over?: 'after' | 'instead') => void;
  readonly onDrop: () => void;
}

const WORDS: Readonly<Record<'full' | 'forbidden', string>> = {
  full: 'Not saved: the storage of this device is full. A putt needs a few hundred bytes. Free some space (old downloads, pictures), then press Save: what you tapped stays here, over a reload too.',
  forbidden:
    'Not saved: the device refused to write, where it should have confirmed. Press Save again. If it stays like this, load the page again: what you tapped stays here.',
};

const Elsewhere = ({ hole, onDevice, corrects, units, onSave, onDrop }: RefusedProps) => (
  <>
    <p>
      Not saved: another tab has changed hole {hole} since you began this putt. On the device now:
      {onDevice.length === 0 && ' no putt.'}
    </p>
    <ol>
      {onDevice.map((putt) => (
        <li key={putt.id}>{puttWords(putt, units)}</li>
      ))}
    </ol>
    <p>Yours, below, is kept here until you choose:</p>
    <div class="rec-choices">
      {(corrects || !isHoledOut(onDevice)) && (
        <button type="button" onClick={() => onSave('after')}>
          {corrects ? 'Correct it there' : 'Save mine after these'}
        </button>
      )}
      {!corrects && (
        <button type="button" onClick={() => onSave('instead')}>
          Put mine in their place
        </button>
      )}
      <button type="button" onClick={onDrop}>
        Drop mine
      </button>
    </div>
  </>
);

/** Something that must be seen before anything else, wherever the thumb is. */
export const Notice = ({ of, children }: { of: string; children: ComponentChildren }) => {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => box.current?.scrollIntoView({ block: 'nearest' }), []);
  return (
    <div class="rec-refused" role="alert" data-testid={of} ref={box}>
      {children}
    </div>
  );
};

export const Refused = (props: RefusedProps) => {
  const { refusal, hole } = props;
  return (
    <Notice of="refused">
      {refusal.why !== 'elsewhere' ? (
        <p>{WORDS[refusal.why]}</p>
      ) : refusal.of === 'putt' ? (
        <Elsewhere {...props} />
      ) : (
        <p>
          Nothing was changed: another tab has changed hole {hole} meanwhile. It is shown as it is now; press
          again if you still want to.
        </p>
      )}
    </Notice>
  );
};
