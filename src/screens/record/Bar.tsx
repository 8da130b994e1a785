/** The line of actions under a question: the main one under the thumb of the hand that holds the telephone. */
import type { ComponentChildren } from 'preact';
import type { Hand } from '../../state/settings.ts';

export const Bar = ({
  hand,
  other,
  main,
}: {
  hand: Hand;
  other?: ComponentChildren;
  main?: ComponentChildren;
}) => (
  <div class="rec-bar" data-hand={hand}>
    {hand === 'right' ? (
      <>
        <div class="rec-bar-other">{other}</div>
        {main}
      </>
    ) : (
      <>
        {main}
        <div class="rec-bar-other">{other}</div>
      </>
    )}
  </div>
);
