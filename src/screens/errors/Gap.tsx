/** Break named beside break played, and how to get whichever is missing. */
import { Link } from 'wouter-preact';
import { gapWords, NEVER_MIXED } from './gapWords.ts';
import { named } from './named.ts';
import { view } from './view.ts';
import { behind } from './work.ts';

export const Gap = () => {
  const reads = named.value;
  const found = view.value;
  if (reads === undefined) return null;
  const fitted = found?.answer.errors.readBias;
  const { words, missing } = gapWords({
    named: reads === 'none' ? undefined : { value: reads.value, range: { low: reads.low, high: reads.high } },
    played: fitted && { value: fitted.median, range: fitted.range90 },
    putts: found?.putts ?? 0,
    invented: found?.invented ?? false,
  });
  return (
    <section class={behind.value && found ? 'card stale' : 'card'} aria-labelledby="gap-title">
      <h2 id="gap-title">What you name, and what you play</h2>
      <p data-testid="gap">{words}</p>
      {(missing === 'named' || missing === 'both') && (
        <p>
          To know what you name: <Link href="/read/adaptive">read ten putts</Link>, on two days or more.
        </p>
      )}
      {(missing === 'played' || missing === 'both') && (
        <p>
          To know what you play: <Link href="/record">record putts</Link> that break, some sixty of them, with
          the side of each miss tapped.
        </p>
      )}
      <p class="hint">{NEVER_MIXED}</p>
    </section>
  );
};
