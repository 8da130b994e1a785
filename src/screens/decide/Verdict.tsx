/** The sentence that answers the question, and its margin. */
import { units } from '../../app/settings.ts';
import { verdictDetail, verdictHeadline, verdictMargin, verdictMissing } from '../../text/verdict.ts';
import {
  answer,
  behind,
  cancelWork,
  failure,
  margin,
  marginBehind,
  marginProgress,
  stopped,
  tableBehind,
} from './answer.ts';
import { problem } from './situation.ts';

const reasonOf = (pace: { read: { status: string; reason?: string } } | undefined): string | undefined =>
  pace?.read.status === 'noLine' ? pace.read.reason : undefined;

const Working = () => {
  if (problem.value !== undefined) return null;
  const busy = tableBehind.value || behind.value;
  if (stopped.value)
    return <p class="working quiet">Stopped. Any change to the putt starts the work again.</p>;
  if (!busy && marginProgress.value === undefined) return null;
  const words = busy ? 'Working out three-putts…' : 'Trying other green speeds and slopes…';
  return (
    <div class="working quiet">
      <span>{words}</span>
      <progress aria-label={words} max={1} value={busy ? undefined : marginProgress.value} />
      <button type="button" class="plain" onClick={cancelWork}>
        Stop
      </button>
    </div>
  );
};

const Margin = () => {
  const now = answer.value;
  const cases = margin.value;
  if (!now?.die.odds || !now.firm.odds || cases === undefined) return null;
  const land = now.putt.surface;
  return (
    <p class={marginBehind.value ? 'margin stale' : 'margin'} data-testid="margin">
      {verdictMargin({
        difference: now.firm.odds.expectedPutts - now.die.odds.expectedPutts,
        cases,
        greenSpeed: now.putt.greenSpeed,
        slope: land.kind === 'plane' ? land.slope : undefined,
      })}
    </p>
  );
};

export const Verdict = () => {
  const now = answer.value;
  const stale = behind.value || tableBehind.value || problem.value !== undefined;
  const odds = now?.die.odds && now.firm.odds ? { die: now.die.odds, firm: now.firm.odds } : undefined;
  const reasons = [reasonOf(now?.die), reasonOf(now?.firm)];
  return (
    <section class="card verdict" aria-label="The answer">
      <div aria-live="polite" aria-atomic="true" class={stale ? 'stale' : undefined}>
        <h1 data-testid="verdict">
          {odds
            ? verdictHeadline(odds.die, odds.firm)
            : now
              ? verdictMissing(reasons[0], reasons[1])
              : 'Die it in or firm?'}
        </h1>
      </div>
      {problem.value !== undefined && (
        <p class="problem" role="alert">
          {problem.value} The last good answer is kept below.
        </p>
      )}
      {failure.value !== undefined && (
        <p class="problem" role="alert">
          {failure.value}
        </p>
      )}
      {reasons
        .filter((reason): reason is string => reason !== undefined)
        .map((reason) => (
          <p key={reason}>{reason}</p>
        ))}
      {odds && <p class={stale ? 'stale' : undefined}>{verdictDetail(odds.die, odds.firm, units.value)}</p>}
      <Margin />
      <Working />
    </section>
  );
};
