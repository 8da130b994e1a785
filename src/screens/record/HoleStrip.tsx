/** The holes of the round with the putts of each: any can be looked at. */
import { useEffect, useRef } from 'preact/hooks';
import type { RoundInHand } from '../../store/records.ts';
import { countWords, puttsCounted } from '../../text/record.ts';
import { isFinished, puttsOfHole } from './hole.ts';

export interface HoleStripProps {
  readonly inHand: RoundInHand;
  readonly hole: number;
  readonly onHole: (hole: number) => void;
}

export const HoleStrip = ({ inHand, hole, onHole }: HoleStripProps) => {
  const strip = useRef<HTMLOListElement>(null);
  // Only the strip moves: scrollIntoView would move the page as well.
  useEffect(() => {
    const now = strip.current?.querySelector<HTMLElement>('[aria-current]');
    if (now && strip.current)
      strip.current.scrollLeft = now.offsetLeft - (strip.current.clientWidth - now.offsetWidth) / 2;
  }, [hole]);
  const cell = (number: number) => {
    const putts = puttsOfHole(inHand, number);
    const without = inHand.round.withoutPutt.includes(number);
    const done = isFinished(inHand, number);
    const count = puttsCounted(putts);
    const said = without
      ? 'no putt'
      : putts.length === 0
        ? 'nothing yet'
        : `${countWords(count, 'putt')}${done ? '' : ' so far'}`;
    return (
      <li key={number}>
        <button
          type="button"
          aria-current={number === hole ? 'step' : undefined}
          data-hole={number}
          data-done={done}
          onClick={() => onHole(number)}
        >
          <span class="unseen">
            Hole {number}: {said}
          </span>
          <span class="rec-hole-number" aria-hidden="true">
            {number}
          </span>
          <span class="rec-hole-putts" aria-hidden="true">
            {without ? '–' : putts.length === 0 ? '' : `${count}${done ? '' : '…'}`}
          </span>
        </button>
      </li>
    );
  };
  return (
    <nav aria-label="Holes">
      <ol class="rec-strip" ref={strip}>
        {Array.from({ length: inHand.round.holes }, (_, index) => cell(index + 1))}
      </ol>
    </nav>
  );
};
