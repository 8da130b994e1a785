/** What a person has this week, and the button that makes a plan of it; the costs are worked out meanwhile. */
import { signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { feetToMetres, metresToFeet } from '../../../sim/index.ts';
import { carpetHint, TakeMeasured } from '../../controls/CarpetBasis.tsx';
import { Choice } from '../../controls/Choice.tsx';
import { Working } from '../../controls/CostsWorking.tsx';
import { Slider } from '../../controls/Slider.tsx';
import { carpetSpeed, followCarpet, setCarpetSpeed } from '../../state/carpet.ts';
import { costJob } from '../../state/costs/work.ts';
import { formatGreenSpeed } from '../../text/format.ts';
import { currentPlan } from './kept.ts';
import {
  asked,
  CARPET_SPEEDS,
  daysOfWeek,
  followMaking,
  pending,
  renewStart,
  setAsked,
  setCount,
  start,
} from './making.ts';
import { SessionFields } from './SessionFields.tsx';

/** A new plan is wanted beside the one in hand. */
export const planning = signal(false);

const CarpetSpeed = () => (
  <>
    <Slider
      id="carpet-speed"
      label="Your carpet"
      hint={`As a green speed. ${carpetHint()}`}
      min={CARPET_SPEEDS.min}
      max={CARPET_SPEEDS.max}
      step={0.5}
      value={Math.round(2 * metresToFeet(carpetSpeed.value)) / 2}
      shown={formatGreenSpeed(carpetSpeed.value)}
      onValue={(feet) => setCarpetSpeed(feetToMetres(feet))}
    />
    <TakeMeasured />
  </>
);

export const Maker = () => {
  useEffect(renewStart, []);
  useEffect(followCarpet, []);
  useEffect(costJob.follow, []);
  useEffect(
    () =>
      followMaking(() => {
        planning.value = false;
      }),
    [],
  );
  const sessions = asked.value;
  return (
    <section class="card week-maker" aria-labelledby="maker-title">
      <h2 id="maker-title">What time have you this week?</h2>
      <Choice
        legend="Sessions"
        name="week-count"
        showLegend
        value={String(sessions.length)}
        options={[
          { value: '2', label: 'two' },
          { value: '3', label: 'three' },
        ]}
        onChange={(count) => setCount(Number(count))}
      />
      <ol class="week-asked">
        {sessions.map((session, i) => (
          <li key={i}>
            <SessionFields
              id={`asked-${i + 1}`}
              name={`Session ${i + 1}`}
              session={session}
              days={daysOfWeek(start.value)}
              onChange={(change) => setAsked(i, change)}
            />
          </li>
        ))}
      </ol>
      {sessions.some(({ ground }) => ground === 'carpet') && <CarpetSpeed />}
      <p class="week-ways">
        <button
          type="button"
          class="main"
          disabled={pending.value}
          onClick={() => {
            pending.value = true;
          }}
        >
          {pending.value ? 'The plan follows' : 'Plan the week'}
        </button>
        {currentPlan.value !== undefined && (
          <button
            type="button"
            class="plain"
            onClick={() => {
              planning.value = false;
            }}
          >
            Keep the plan there is
          </button>
        )}
      </p>
      {costJob.failure.value !== undefined && (
        <p class="problem" role="alert">
          {costJob.failure.value}
        </p>
      )}
      <div class="working quiet">
        <Working />
      </div>
      <p class="hint">
        The plan gives time to what costs you strokes, so your errors are played first, with and without each.
        Your errors are set on the screens Decide and What it costs, or come from your record (Your errors).
      </p>
    </section>
  );
};
