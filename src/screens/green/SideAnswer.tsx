/** The sentence that answers the question, its margin, the distance it is asked for, and how far the work is. */
import { useEffect } from 'preact/hooks';
import { Link } from 'wouter-preact';
import { feetToMetres, metresToFeet } from '../../../sim/index.ts';
import { Slider } from '../../controls/Slider.tsx';
import { spokenAtRest } from '../../controls/spoken.ts';
import { WorkLine } from '../../controls/WorkLine.tsx';
import { knownPlayer, presetInUse, units } from '../../state/settings.ts';
import { problem } from '../../state/situation.ts';
import { TEST_WORDS, whoWords } from '../../text/family.ts';
import { formatLength } from '../../text/format.ts';
import { familySides, sides, speeds, stale } from './answer.ts';
import { failure, familyTables, resumeWork, shown, stopped, stopWork, work } from './mapWork.ts';
import { DISTANCES, distance } from './question.ts';
import { PLACES } from './view.ts';
import {
  askedHow,
  noSides,
  sideDetail,
  sideForAll,
  sideHeadline,
  sideMargin,
  sideOfMiddle,
  sidesMissing,
  sideTurns,
} from './words.ts';

const WORK_WORDS = {
  table: 'Working out the next putts',
  map: 'Refining the map',
  speeds: 'Trying a foot slower and faster',
  family: 'Asking who else you may be',
} as const;

const Working = () => {
  if (problem.value !== undefined) return null;
  const now = work.value;
  return (
    <WorkLine
      stopped={stopped.value}
      work={now && { words: WORK_WORDS[now.what], share: now.share }}
      rest={stale.value ? 'Waiting for the green to keep still…' : 'The map is finished.'}
      onStop={stopWork}
      onResume={resumeWork}
    />
  );
};

/** Of everybody, once all that are asked have been. */
const forAll = () => {
  const asked = familyTables.value;
  return asked && asked.members.length === asked.of && !stale.value ? familySides.value : undefined;
};

const headline = (): string => {
  const found = sides.value;
  const all = forAll();
  if (found) return (all && sideTurns(found, all, units.value)) ?? sideHeadline(found, units.value);
  return shown.value === undefined ? 'Working it out…' : noSides(distance.value, units.value);
};

/** The same for everybody the person may be. */
const ForAll = () => {
  const { members, origin } = knownPlayer.value;
  const found = sides.value;
  if (members.length < 2 || found === undefined || stale.value) return null;
  const all = forAll();
  if (all === undefined)
    return (
      <p class="hint" data-testid="side-family">
        {sideOfMiddle(members.length)}
      </p>
    );
  const test = all.turns?.on && TEST_WORDS[all.turns.on.test];
  return (
    <>
      <p data-testid="side-family">
        {sideForAll(all, found, units.value)} {test && <Link href={test.link}>{test.linkWords}</Link>}
      </p>
      <p class="hint">
        {askedHow(all.asked, members.length, whoWords(origin, members.length, presetInUse.value?.name))}
      </p>
    </>
  );
};

/** Quiet time before it is read out, ms. */
const SPEAK_PAUSE = 900;
const spoken = spokenAtRest(() => {
  const words = headline();
  return stale.value || shown.value === undefined ? undefined : words;
}, SPEAK_PAUSE);

/** The slider's step is one a person would say: a foot, or a quarter of a metre. */
const DistanceSlider = () => {
  const imperial = units.value === 'imperial';
  const toShown = imperial ? metresToFeet : (metres: number) => metres;
  const fromShown = imperial ? feetToMetres : (metres: number) => metres;
  const step = imperial ? 1 : 0.25;
  const round = (metres: number): number => Math.round(toShown(metres) / step) * step;
  return (
    <Slider
      id="distance"
      label="Distance from the hole"
      hint="How far away you would leave the approach, on whichever side."
      min={round(DISTANCES.min)}
      max={round(DISTANCES.max)}
      step={step}
      value={round(distance.value)}
      shown={formatLength(distance.value, units.value)}
      onValue={(value) => {
        distance.value = fromShown(value);
      }}
    />
  );
};

export const SideAnswer = () => {
  useEffect(spoken.follow, []);
  const found = sides.value;
  const other = speeds.value;
  const dim = stale.value ? 'stale' : undefined;
  const missing = found && sidesMissing(found.sides.length, PLACES);
  return (
    <section class="card verdict side-answer" aria-label="The answer">
      <p class="question">Which side should I leave my approach, and what is it worth?</p>
      <h1 data-testid="side-answer" class={dim}>
        {headline()}
      </h1>
      <p class="unseen" role="status">
        {spoken.words.value}
      </p>
      {stale.value && shown.value !== undefined && (
        <p class="hint" data-testid="stale">
          Of the green as it was before{stopped.value ? '.' : '; the new answer is on its way.'}
        </p>
      )}
      {problem.value !== undefined && (
        <p class="problem" role="alert">
          {problem.value} The last good answer is kept.
        </p>
      )}
      {failure.value !== undefined && (
        <p class="problem" role="alert">
          {failure.value}
        </p>
      )}
      {found && <p class={dim}>{sideDetail(found)} Everywhere counts with your errors.</p>}
      <ForAll />
      {missing !== undefined && <p class="hint">{missing}</p>}
      {found && other && (
        <p class={dim ? 'margin stale' : 'margin'} data-testid="side-margin">
          {sideMargin(found.best, other)}
        </p>
      )}
      <DistanceSlider />
      <div class="working quiet">
        <Working />
      </div>
    </section>
  );
};
