/** The answer: the score to expect, the pass mark and what it does not prove; by place, and every score with its chance. */
import { useComputed } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { type DrillExpectation, type PuttingDrill, scoreRange } from '../../../sim/index.ts';
import { ChartFigure } from '../../charts/ChartFigure.tsx';
import type { ScorePlotData } from '../../charts/scorePlot.ts';
import { nameOf } from '../../controls/drills/drillPlan.ts';
import { spokenAtRest } from '../../controls/spoken.ts';
import { units } from '../../state/settings.ts';
import { scoreWords } from '../../text/drills.ts';
import { formatLength, formatPercent, formatSlope } from '../../text/format.ts';
import { chosen } from './state.ts';
import {
  DRILL_GROUND_WORDS,
  expectedSentence,
  formatScore,
  markSentence,
  PROVES_NOTHING,
  repetitionsSentence,
  TRAINED_WORDS,
} from './words.ts';
import { expectation, failure } from './work.ts';

const load = () => import('../../charts/scorePlot.ts').then(({ scorePlot }) => scorePlot);

/** The expectation, once it is there and there is one. */
const known = (): DrillExpectation | undefined =>
  expectation.value?.status === 'ok' && expectation.value.drillId === chosen.value.id
    ? expectation.value
    : undefined;

const Places = ({ drill, expected }: { drill: PuttingDrill; expected: DrillExpectation }) => (
  // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that may scroll must be reachable by keyboard
  <section class="scroll" tabIndex={0} aria-label="By place">
    <table>
      <thead>
        <tr>
          <th scope="col">Place</th>
          <th scope="col">from</th>
          <th scope="col">slope</th>
          <th scope="col">balls</th>
          <th scope="col">a ball, mean</th>
        </tr>
      </thead>
      <tbody>
        {expected.stations.map(({ station, slope, points }, place) => (
          <tr key={`${drill.id} ${place}`}>
            <th scope="row">{nameOf(place, drill)}</th>
            <td>{formatLength(station.distanceM, units.value)}</td>
            <td>{formatSlope(slope)}</td>
            <td>{station.balls}</td>
            <td>{points.toFixed(2)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </section>
);

/** Quiet time before it is read out, ms. */
const SPEAK_PAUSE = 900;
const spoken = spokenAtRest(() => {
  const expected = known();
  return expected && expectedSentence(chosen.value, expected);
}, SPEAK_PAUSE);

const Answer = ({ drill }: { drill: PuttingDrill }) => {
  const found = expectation.value;
  const expected = known();
  if (failure.value !== undefined)
    return (
      <p class="problem" role="alert">
        {failure.value}
      </p>
    );
  if (found?.status === 'cannot')
    return (
      <p class="practice-says" data-testid="expected">
        No score can be expected there: {found.reason}
      </p>
    );
  return (
    <>
      <p class="practice-says" data-testid="expected">
        {expected ? expectedSentence(drill, expected) : 'Working out the score to expect…'}
      </p>
      {expected && (
        <>
          <p data-testid="mark">{markSentence(drill, expected)}</p>
          <p>{PROVES_NOTHING}</p>
          <p data-testid="repetitions">{repetitionsSentence(expected)}</p>
          <p class="hint">
            Every stroke counts as independent, and your errors as they stand: how sure you are of them is not
            in the range.
          </p>
        </>
      )}
    </>
  );
};

export const Expected = () => {
  useEffect(spoken.follow, []);
  const drill = chosen.value;
  return (
    <section class="card" aria-labelledby="drill-title">
      <p class="quiet">
        Trains {TRAINED_WORDS[drill.trains]}; {DRILL_GROUND_WORDS[drill.ground]}; {drill.minutes} minutes
      </p>
      <h1 id="drill-title">{drill.name}</h1>
      <p>{drill.purpose}</p>
      <Answer drill={drill} />
      <p class="unseen" role="status">
        {spoken.words.value}
      </p>
    </section>
  );
};

const chartOf = (expected: DrillExpectation): ScorePlotData => ({
  scores: Array.from(expected.chances, (chance, score) => ({
    score,
    chance,
    passes: expected.better === 'higher' ? score >= expected.mark.score : score <= expected.mark.score,
  })),
  least: scoreRange(chosen.value).least,
  mark: expected.mark.score,
});

/** Table and chart behind the sentence. */
export const Chances = () => {
  const data = useComputed(() => {
    const expected = known();
    return expected && chartOf(expected);
  });
  const expected = known();
  const drill = chosen.value;
  if (expected === undefined || data.value === undefined) return null;
  const { scores, least, mark } = data.value;
  return (
    <ChartFigure
      id="score-chances"
      heading="How scores would spread"
      title={`Chance of each score of “${drill.name}” as you are. Mean ${formatScore(expected.mean)}, pass mark ${mark}.`}
      load={load}
      data={data.value}
      table={{
        head: [scoreWords(drill), 'chance', 'passes'],
        rows: scores
          .filter(({ score }) => score >= least)
          .map(({ score, chance, passes }) => [String(score), formatPercent(chance), passes ? 'yes' : 'no']),
      }}
      fileName={`drill-${drill.id}`}
      height={200}
    >
      <p>
        Scores that pass are drawn stronger. With the trained error a step smaller the mean would be{' '}
        {formatScore(expected.meanBetter)} in the place of {formatScore(expected.mean)}.
      </p>
      {expected.stations.length > 1 && <Places drill={drill} expected={expected} />}
    </ChartFigure>
  );
};
