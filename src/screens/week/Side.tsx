/** Taking the plan away, planning anew, and the plans before it. */
import { signal } from '@preact/signals';
import type { Plan } from '../../store/planSchema.ts';
import { formatDay } from '../../text/format.ts';
import { earlierPlans } from './kept.ts';
import { planning } from './Maker.tsx';
import { saveCalendar } from './takeAway.ts';
import { weekHeadline } from './words.ts';

const problem = signal<string | undefined>(undefined);

const save = (plan: Plan): void => {
  problem.value = undefined;
  saveCalendar(plan).catch(() => {
    problem.value = 'The calendar file could not be made. Load the page again and try once more.';
  });
};

export const TakeAway = ({ plan }: { plan: Plan }) => (
  <section class="card" aria-labelledby="take-title">
    <h2 id="take-title">Take it away</h2>
    <p class="week-ways">
      <button type="button" onClick={() => save(plan)}>
        Calendar file
      </button>
      <button type="button" onClick={() => print()}>
        Print
      </button>
    </p>
    {problem.value !== undefined && (
      <p class="problem" role="alert">
        {problem.value}
      </p>
    )}
    <p class="hint">
      The file has one all-day entry for each session and one for the repetition of the test, for any calendar
      (iCalendar). After a change save it again: calendars put the newer entry in the place of the old one.
      The plan and its scores are among your records on this device, and in your backups.
    </p>
    {!planning.value && (
      <button
        type="button"
        onClick={() => {
          planning.value = true;
        }}
      >
        Plan a new week
      </button>
    )}
  </section>
);

const doneOf = ({ sessions }: Plan): string => {
  const items = sessions.flatMap((session) => session.items);
  return `${items.filter(({ doneOn }) => doneOn !== undefined).length} of ${items.length} done`;
};

export const Earlier = () => {
  const plans = earlierPlans.value;
  if (plans.length === 0) return null;
  return (
    <section class="card" aria-labelledby="earlier-title" data-testid="week-earlier">
      <details>
        <summary id="earlier-title">Earlier weeks ({plans.length})</summary>
        <ul class="week-list">
          {plans.map((plan) => (
            <li key={plan.id}>
              {formatDay(plan.start)}, {doneOf(plan)}. {weekHeadline(plan)}
            </li>
          ))}
        </ul>
      </details>
    </section>
  );
};
