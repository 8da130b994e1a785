/** A putt as it was entered, before it is saved: taken back, corrected, or not written by the device. */
import type { Hand } from '../../state/settings.ts';
import type { Units } from '../../text/format.ts';
import { BREAK_WORDS, CLIMB_WORDS, countWords, fateOfPutt, formatTapped } from '../../text/record.ts';
import { Bar } from './Bar.tsx';
import { isComplete, type Pad, type PuttDraft, puttOf, type Tap } from './draft.ts';
import { MorePad } from './MorePad.tsx';

export interface CheckPadProps {
  readonly draft: PuttDraft;
  readonly units: Units;
  readonly hand: Hand;
  /** On the device already: this corrects it. */
  readonly corrects: boolean;
  /** Putts after it that saving takes out. */
  readonly takesAway: number;
  readonly onTap: (tap: Tap) => void;
  readonly onSave: () => void;
  readonly onDrop: () => void;
  readonly onRemove: () => void;
}

export const CheckPad = (props: CheckPadProps) => {
  const { draft, units, hand, corrects, takesAway, onTap, onSave, onDrop, onRemove } = props;
  const row = (pad: Pad, name: string, said: string) => (
    <button type="button" class="rec-said" data-ask={name} onClick={() => onTap({ kind: 'ask', pad })}>
      <span class="quiet">{name}</span>
      <span>{said}</span>
    </button>
  );
  return (
    <>
      {row(
        'putt',
        'The putt',
        [
          draft.distance === undefined ? 'how far?' : formatTapped(draft.distance, units),
          draft.climb ? CLIMB_WORDS[draft.climb] : 'up or down not said',
          draft.breaks ? BREAK_WORDS[draft.breaks] : 'break not said',
        ].join(', '),
      )}
      {row(
        'result',
        'Where it went',
        isComplete(draft) ? fateOfPutt(puttOf(draft, 0), units) : 'not said yet',
      )}
      {draft.result === 'missed' &&
        row(
          'leave',
          'What was left',
          draft.leave === undefined ? 'not said yet' : formatTapped(draft.leave, units),
        )}
      <MorePad more={draft} onMore={(more) => onTap({ kind: 'more', more })} />
      {takesAway > 0 && (
        <p class="problem">
          Saved like this, the hole ends with this putt: {countWords(takesAway, 'putt')} after it{' '}
          {takesAway === 1 ? 'is' : 'are'} taken out.
        </p>
      )}
      <Bar
        hand={hand}
        other={
          <button type="button" onClick={onDrop}>
            {corrects ? 'Leave it as it was' : 'Drop it'}
          </button>
        }
        main={
          <button type="button" class="main" disabled={!isComplete(draft)} onClick={onSave}>
            Save
          </button>
        }
      />
      {corrects && (
        <div class="rec-apart">
          <button type="button" onClick={onRemove}>
            Take this putt out
          </button>
        </div>
      )}
    </>
  );
};
