/** Strokes gained: sentence, rounds and their running mean, where they are lost, each round in a sentence. */
import { useComputed } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { ChartFigure } from '../../charts/ChartFigure.tsx';
import type { GainedPlotData } from '../../charts/gainedPlot.ts';
import { Pages, usePage } from '../../controls/Pages.tsx';
import { units } from '../../state/settings.ts';
import { formatDay } from '../../text/format.ts';
import { bandName, formatSigned, strokesWords } from '../../text/phrases.ts';
import { type GainedRow, type GainedView, takenOf } from './gained.ts';
import { gainedHeadline, gainedTitle, takenWords, worstWords } from './gainedWords.ts';
import { review } from './state.ts';

const load = () => import('../../charts/gainedPlot.ts').then(({ gainedPlot }) => gainedPlot);

/** Rounds drawn as dots, the newest; the running mean is of all of them. */
const DOTS = 300;
const PER_PAGE = 6;
/** Room above and below the dots, strokes. */
const ROOM = 0.5;

const chartOf = ({ rows, running }: GainedView): GainedPlotData => {
  const newest = rows.slice(0, DOTS);
  const gains = newest.map(({ per18 }) => per18);
  const first = newest.at(-1)?.number ?? 1;
  return {
    rounds: newest.map(({ number, per18 }) => ({ number, gained: per18 })),
    running: running
      .filter(({ number, mean }) => number >= first && Number.isFinite(mean.low))
      .map(({ number, mean: { value, low, high } }) => ({ number, value, low, high })),
    first,
    last: newest[0]?.number ?? 1,
    least: Math.min(-1, ...gains) - ROOM,
    most: Math.max(1, ...gains) + ROOM,
  };
};

const ByDistance = ({ view }: { view: GainedView }) => (
  // biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than a phone must scroll by keys too
  <section class="scroll" tabIndex={0} aria-label="Strokes gained by distance of the putt">
    <table class="review-table" data-testid="gained-by-distance">
      <thead>
        <tr>
          <th scope="col">putts from</th>
          <th scope="col">a round</th>
          <th scope="col">gained per 18 holes</th>
          <th scope="col">says</th>
        </tr>
      </thead>
      <tbody>
        {view.byDistance.map(({ band, puttsPer18, per18, verdict }) => (
          <tr key={band.from}>
            <th scope="row">{bandName(band, units.value)}</th>
            <td>{puttsPer18.toFixed(1)}</td>
            <td>{per18 === undefined ? 'none' : strokesWords(per18)}</td>
            <td>{verdict === 'cannotTell' ? 'cannot tell' : verdict}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </section>
);

const check = (roundId: string): void => {
  review.roundId.value = roundId;
  const heading = document.getElementById('round-title');
  heading?.scrollIntoView({ block: 'start' });
  document.getElementById('review-round')?.focus({ preventScroll: true });
};

const RoundLine = ({ row }: { row: GainedRow }) => {
  const benchmark = review.benchmark.value;
  const holes = review.chosen.value.holes;
  const words = useMemo(() => {
    const own = holes.filter(({ roundId }) => roundId === row.roundId);
    const { gained, leftOut } = row;
    return takenWords({ taken: takenOf(own, benchmark), gained, leftOut, name: benchmark.name });
  }, [holes, benchmark, row]);
  return (
    <li class="review-round-line">
      <p>
        <strong>{formatDay(row.round.day)}</strong>
        {row.round.course !== undefined && <>, {row.round.course}</>}:{' '}
        <span class="review-gain">{formatSigned(row.gained)} strokes</span>
        {row.holes !== 18 && `, ${formatSigned(row.per18)} per 18 holes`}
      </p>
      <p class="quiet">{words}</p>
      <button type="button" class="plain" onClick={() => check(row.roundId)}>
        Check this round<span class="unseen">, {formatDay(row.round.day)}</span>
      </button>
    </li>
  );
};

const Rounds = ({ view }: { view: GainedView }) => {
  const page = usePage(view.rows.length, PER_PAGE);
  if (view.rows.length === 0) return null;
  return (
    <section class="card" aria-labelledby="rounds-title">
      <h2 id="rounds-title">Round by round</h2>
      <ul class="review-rounds" data-testid="rounds">
        {view.rows.slice(page.from, page.to).map((row) => (
          <RoundLine key={row.roundId} row={row} />
        ))}
      </ul>
      <Pages what="Rounds" page={page} count={view.rows.length} number={page.number} onTurn={page.turn} />
    </section>
  );
};

export const GainedSection = () => {
  const data = useComputed(() => chartOf(review.gained.value));
  const view = review.gained.value;
  const { name } = review.benchmark.value;
  return (
    <>
      <ChartFigure
        id="gained"
        heading="Strokes gained"
        title={gainedTitle(view, name)}
        load={load}
        data={data.value}
        height={250}
        fileName="borrow-strokes-gained"
        table={{
          head: [
            'round',
            'day',
            'course',
            'holes',
            'putts counted',
            'left out',
            'gained',
            'per 18 holes',
            `gained since the first, against ${name}`,
          ],
          rows: view.rows.map((row) => [
            String(row.number),
            formatDay(row.round.day),
            row.round.course ?? '',
            String(row.holes),
            String(row.putts),
            String(row.leftOut),
            formatSigned(row.gained),
            formatSigned(row.per18),
            formatSigned(row.running),
          ]),
        }}
      >
        <p class="review-answer" data-testid="gained-answer">
          {gainedHeadline(view, name)}
        </p>
        <p data-testid="worst">{worstWords(view, units.value)}</p>
        <ByDistance view={view} />
        {view.rows.length > DOTS && (
          <p class="quiet">
            Dots: the newest {DOTS} of {view.rows.length} rounds; the line is the mean of all up to there.
          </p>
        )}
      </ChartFigure>
      <Rounds view={view} />
    </>
  );
};
