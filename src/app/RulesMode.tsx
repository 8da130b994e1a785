/**
 * What stands in the place of every screen with advice or analysis while a round is open. Leaves out: when that is (records.ts),
 * which screens it covers (Shell.tsx).
 */
import { useEffect, useRef } from 'preact/hooks';
import { Link } from 'wouter-preact';
import { EndRound } from '../controls/EndRound.tsx';
import { markNoRound, openRound, recordsProblem } from '../state/records.ts';
import { RULES_TITLE, RULES_WORDS } from '../text/record.ts';

/** The mark says a round is open, and the records cannot be read to see it. */
const UnseenRound = () => (
  <>
    <p>
      A round was open when your records could last be read; now they cannot. {recordsProblem.value} If your
      round is over, say so here.
    </p>
    <p>
      <button type="button" onClick={markNoRound}>
        My round is over
      </button>
    </p>
  </>
);

export const RulesMode = () => {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus({ preventScroll: true }), []);
  const now = openRound.value;
  return (
    <section class="card rules-mode" data-testid="rules-mode">
      <h1 ref={heading} tabIndex={-1}>
        {RULES_TITLE}
      </h1>
      <p>{RULES_WORDS}</p>
      {typeof now === 'object' && (
        <div class="rules-ways">
          <Link href="/record" class="button main">
            Back to the round
          </Link>
          <EndRound inHand={now} />
        </div>
      )}
      {now === 'unknown' && <p class="quiet">Looking up your round…</p>}
      {now === 'none' && <UnseenRound />}
    </section>
  );
};
