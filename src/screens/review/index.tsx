/** The review at home: what the player's own record says, and what it cannot say. Leaves out: figures (review.ts), words (text/). */
import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { DemoBanner, DemoOffer, NoRecords } from '../../controls/RecordSource.tsx';
import { RulesCaution } from '../../controls/RulesCaution.tsx';
import { isEmpty } from '../../state/reviewRecord.ts';
import { followRecords, readingProblem, shownSource } from '../../state/shownRecords.ts';
import { Filters } from './Filters.tsx';
import { GainedSection } from './Gained.tsx';
import { HoledSection } from './Holed.tsx';
import { MissesSection } from './Misses.tsx';
import { RoundSection } from './RoundSection.tsx';
import { review } from './state.ts';
import { ThreePuttSection } from './ThreePutts.tsx';
import { TrendSection } from './TrendSection.tsx';
import '../../controls/tables.css';

const SECTIONS: readonly { readonly name: string; readonly Section: ComponentType }[] = [
  { name: 'holed', Section: HoledSection },
  { name: 'three', Section: ThreePuttSection },
  { name: 'misses', Section: MissesSection },
  { name: 'gained', Section: GainedSection },
  { name: 'round', Section: RoundSection },
  { name: 'trend', Section: TrendSection },
];

/** How many sections are there: one more with every turn of the page, so that a hundred thousand putts never hold it up for long. */
const useSteps = (count: number): number => {
  const [steps, setSteps] = useState(1);
  useEffect(() => {
    if (steps >= count) return;
    const timer = setTimeout(() => setSteps(steps + 1));
    return () => clearTimeout(timer);
  }, [steps, count]);
  return steps;
};

const Sections = () => {
  const steps = useSteps(SECTIONS.length);
  return (
    <>
      {SECTIONS.slice(0, steps).map(({ name, Section }) => (
        <div key={name} class={`review-section review-${name}`}>
          <Section />
        </div>
      ))}
      {steps < SECTIONS.length && (
        <p class="quiet" role="status">
          Working out the rest…
        </p>
      )}
    </>
  );
};

const Shown = () => {
  if (!review.read.value)
    return readingProblem.value === undefined ? (
      <p class="quiet" role="status">
        Reading your records…
      </p>
    ) : null;
  const demo = shownSource.value === 'demo';
  if (isEmpty(review.record.value)) return demo ? <DemoBanner /> : <NoRecords />;
  return (
    <>
      {demo && <DemoBanner />}
      <h1 class="unseen">Your putting, reviewed</h1>
      <Filters />
      <div class="review-sections">
        <Sections />
      </div>
      <RulesCaution />
      {!demo && <DemoOffer />}
    </>
  );
};

export const ReviewScreen = () => {
  useEffect(followRecords, []);
  return (
    <div class="review">
      {readingProblem.value !== undefined && (
        <p class="problem" role="alert">
          {readingProblem.value}
        </p>
      )}
      <Shown />
    </div>
  );
};
