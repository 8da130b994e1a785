/** The round check: one round chosen, its sentence, the distribution, band by band, what is evidence, what to practise. */
import { useComputed } from '@preact/signals';
import { useState } from 'preact/hooks';
import { ChartFigure } from '../../charts/ChartFigure.tsx';
import type { CountsPlotData } from '../../charts/countsPlot.ts';
import { Choice } from '../../controls/Choice.tsx';
import { units } from '../../state/settings.ts';
import { formatPercent } from '../../text/format.ts';
import { bandName, formatSigned } from '../../text/phrases.ts';
import { practiseWords } from './gainedWords.ts';
import { LEAN_MEANING } from './missesWords.ts';
import type { RoundView } from './roundCheck.ts';
import {
  bandSentence,
  countsTitle,
  evidenceWords,
  expectedWords,
  explainedWords,
  moreWords,
  roundHeadline,
  roundName,
  verdictWords,
} from './roundWords.ts';
import { review } from './state.ts';

const load = () => import('../../charts/countsPlot.ts').then(({ countsPlot }) => countsPlot);

/** Rounds offered by name, the newest; the others by the buttons and from the list of rounds. */
const OFFERED = 60;
/** Counts less likely than this for both are not drawn. */
const UNSEEN = 0.002;

const chartOf = ({ check, counts }: RoundView, row: number): CountsPlotData => {
  const { holed } = check.bands[row];
  const all = [...counts[row].byPlayer].map((player, count) => ({
    holed: count,
    player,
    benchmark: counts[row].byBenchmark[count],
  }));
  const seen = all.filter((one) => one.player > UNSEEN || one.benchmark > UNSEEN || one.holed === holed);
  return {
    counts: all.slice(seen[0].holed, (seen.at(-1)?.holed ?? 0) + 1),
    actual: holed,
    actualWords: `you: ${holed}`,
  };
};

const RoundChooser = ({ chosen }: { chosen: RoundView }) => {
  const { rounds } = review.record.value;
  const at = rounds.indexOf(chosen.round);
  const newest = rounds.slice(-OFFERED).reverse();
  const offered = newest.includes(chosen.round) ? newest : [...newest, chosen.round];
  const choose = (id: string | undefined): void => {
    review.roundId.value = id;
  };
  return (
    <div class="review-chooser">
      <div class="field">
        <label for="review-round">Round</label>
        <select
          id="review-round"
          value={chosen.round.id}
          onChange={(event) => choose(event.currentTarget.value)}
        >
          {offered.map((round) => (
            <option key={round.id} value={round.id}>
              {roundName(round)}
            </option>
          ))}
        </select>
      </div>
      <button type="button" disabled={at === 0} onClick={() => choose(rounds[at - 1].id)}>
        Earlier
      </button>
      <button type="button" disabled={at === rounds.length - 1} onClick={() => choose(rounds[at + 1].id)}>
        Later
      </button>
    </div>
  );
};

const Explained = ({ view }: { view: RoundView }) => {
  const { explained } = view.check;
  if (explained === undefined) return null;
  const { name } = review.benchmark.value;
  const now = units.value;
  return (
    <div data-testid="explained">
      <h3>Why strokes were gained though nothing dropped</h3>
      <ul class="review-list">
        {explainedWords(explained, name, now).map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than a phone must scroll by keys too */}
      <section class="scroll" tabIndex={0} aria-label="First putts of the round">
        <table class="review-table">
          <thead>
            <tr>
              <th scope="col">first putts from</th>
              <th scope="col">holes</th>
              <th scope="col">gained</th>
              <th scope="col">three-putts</th>
              <th scope="col">benchmark</th>
            </tr>
          </thead>
          <tbody>
            {explained.firstPutts.map(({ band, count, gained, threePutts, expectedThreePutts }) => (
              <tr key={band.from}>
                <th scope="row">{bandName(band, now)}</th>
                <td>{count}</td>
                <td>{formatSigned(gained)}</td>
                <td>{threePutts}</td>
                <td>{expectedThreePutts.toFixed(2)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </div>
  );
};

const Bands = ({ view }: { view: RoundView }) => (
  <ul class="review-bands" data-testid="bands">
    {view.check.bands
      .filter(({ tries }) => tries > 0)
      .map((band) => (
        <li key={`${band.band.from} ${band.band.to}`}>
          <p>{bandSentence(band, units.value)}</p>
          <p class="quiet">
            {verdictWords(band)} To tell a third fewer or more: {moreWords(band)}
          </p>
        </li>
      ))}
  </ul>
);

const Practise = () => (
  <>
    <h3>One thing to practise</h3>
    <p data-testid="practise">
      {practiseWords(review.gained.value, review.holed.value, review.benchmark.value.name, units.value)}
      {review.filtered.value && ' The filters above are in force here.'}
    </p>
  </>
);

export const RoundSection = () => {
  const [row, setRow] = useState(0);
  const data = useComputed(() =>
    review.round.value === undefined
      ? []
      : review.round.value.counts.map((_, i) => chartOf(review.round.value as RoundView, i)),
  );
  const view = review.round.value;
  if (view === undefined) return null;
  const { name } = review.benchmark.value;
  const now = units.value;
  const { bands } = view.check;
  const names = bands.map(({ band }) => bandName(band, now));
  const shown = Math.min(row, bands.length - 1);
  return (
    <ChartFigure
      id="round"
      heading="The round check"
      title={countsTitle(bands[shown], name, now)}
      load={load}
      data={data.value[shown]}
      height={220}
      fileName="borrow-round-check"
      table={{
        head: [
          'from',
          'putts',
          'holed',
          'a player like you (nine in ten)',
          `${name} (nine in ten)`,
          'so few, a player like you',
          'so many',
          'says',
        ],
        rows: bands.map((band, i) => [
          names[i],
          String(band.tries),
          String(band.holed),
          expectedWords(band.byPlayer),
          expectedWords(band.byBenchmark),
          formatPercent(band.byPlayer.soFew),
          formatPercent(band.byPlayer.soMany),
          verdictWords(band),
        ]),
      }}
      after={
        <>
          <Bands view={view} />
          <h3>What is evidence here, and what is not</h3>
          <ul class="review-list" data-testid="evidence">
            {evidenceWords(view, now).map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
          <p class="quiet">{LEAN_MEANING}</p>
          <Practise />
        </>
      }
    >
      <RoundChooser chosen={view} />
      <p class="review-answer" data-testid="round-answer">
        {roundHeadline(view, name, now)}
      </p>
      <Explained view={view} />
      <Choice
        legend="Putts from"
        name="round-band"
        showLegend
        value={String(shown)}
        options={names.map((label, i) => ({ value: String(i), label }))}
        onChange={(value) => setRow(Number(value))}
      />
      <ul class="keys review-keys">
        <li>
          <svg viewBox="0 0 28 14" aria-hidden="true">
            <rect class="bar" x="9" y="1" width="10" height="13" />
          </svg>
          a player like you: {expectedWords(bands[shown].byPlayer)} of {bands[shown].tries}
        </li>
        <li>
          <svg viewBox="0 0 28 14" aria-hidden="true">
            <circle class="benchmark-dot" cx="14" cy="7" r="4" />
          </svg>
          {name}: {expectedWords(bands[shown].byBenchmark)}
        </li>
      </ul>
    </ChartFigure>
  );
};
