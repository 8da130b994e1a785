/** What to practise: a set left unfinished, the sets and drills, when the truth is shown, progress. Leaves out: earlier sets (EarlierSets.tsx). */
import { useEffect, useRef } from 'preact/hooks';
import { READ_DRILLS } from '../../../drills/index.ts';
import { Choice } from '../../controls/Choice.tsx';
import type { PageInHand } from '../../controls/Pages.tsx';
import { ADAPTIVE_SET, type Offer, PACE_SET, SLOPE_SET } from '../../state/readOffers.ts';
import { isFinished, type KeptSet } from '../../store/schema.ts';
import type { Feedback } from './asked.ts';
import { EarlierSets } from './EarlierSets.tsx';
import { ProgressCard } from './ProgressCard.tsx';
import { shownWords } from './words.ts';

export interface ChooserProps {
  readonly sets: readonly KeptSet[];
  readonly ready: boolean;
  readonly unreadable: number;
  /** The id of the drill whose putts are being drawn. */
  readonly making: string | undefined;
  /** The id of the set that a link asks for. */
  readonly wanted?: string;
  readonly feedback: Feedback;
  readonly onFeedback: (feedback: Feedback) => void;
  /** Of the earlier sets. */
  readonly earlier: PageInHand;
  readonly onStart: (offer: Offer) => void;
  readonly onResume: (set: KeptSet) => void;
  readonly onLook: (set: KeptSet) => void;
}

/** How a drill file says that nobody in particular is to be thanked. */
const NO_SOURCE = 'common practice, no source';

const Unfinished = ({ set, onResume }: { set: KeptSet; onResume: (set: KeptSet) => void }) => (
  <p class="read-unfinished" data-testid="unfinished">
    <span>
      {set.drillName} ({set.answers.length} of {set.size} putts answered)
    </span>
    <button type="button" class="read-main" onClick={() => onResume(set)}>
      Go on with putt {set.answers.length + 1}
    </button>
  </p>
);

/** Under the drills: who says so, where somebody does. */
const drillNote = (offer: Offer): string | undefined =>
  'surface' in offer
    ? `${shownWords(offer)}${offer.source === NO_SOURCE ? '' : `; source: ${offer.source}`}`
    : undefined;

interface OfferRowProps {
  readonly offer: Offer;
  readonly making: string | undefined;
  readonly wanted: boolean;
  readonly onStart: (offer: Offer) => void;
}

const OfferRow = ({ offer, making, wanted, onStart }: OfferRowProps) => {
  const note = drillNote(offer);
  const start = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (wanted) start.current?.focus();
  }, [wanted]);
  return (
    <li class={`${offer.id === ADAPTIVE_SET.id ? 'read-first' : ''} ${wanted ? 'read-wanted' : ''}`.trim()}>
      <div>
        <h2>{offer.name}</h2>
        {wanted && <p class="read-planned">Planned in The week: start it here.</p>}
        <p>{offer.purpose}</p>
        {note && <p class="quiet">{note}</p>}
      </div>
      <button
        ref={start}
        type="button"
        class={wanted || offer.id === ADAPTIVE_SET.id ? 'read-main' : undefined}
        aria-label={`Start ${offer.name}`}
        data-drill={offer.id}
        disabled={making !== undefined}
        onClick={() => onStart(offer)}
      >
        {making === offer.id ? 'Drawing…' : 'Start'}
      </button>
    </li>
  );
};

/** In the order they are offered. */
const OFFERS: readonly Offer[] = [ADAPTIVE_SET, PACE_SET, SLOPE_SET, ...READ_DRILLS];

export const Chooser = (props: ChooserProps) => {
  const {
    sets,
    ready,
    unreadable,
    making,
    wanted,
    feedback,
    onFeedback,
    earlier,
    onStart,
    onResume,
    onLook,
  } = props;
  const unfinished = sets.find((set) => !isFinished(set));
  return (
    <div class="read-chooser">
      <section class="card">
        <h1>Read it yourself</h1>
        <p>
          Ten putts, each with a called pace. Aim, commit, and only then see the true line, how far off you
          were and what it cost. At the end: do you see too little break or too much, and where? Or choose
          between two paces, or name the slope.
        </p>
        {unfinished && <Unfinished set={unfinished} onResume={onResume} />}
        <div class="read-feedback">
          <Choice
            legend="Show the truth"
            name="read-feedback"
            showLegend
            value={feedback}
            options={[
              { value: 'each', label: 'after each putt' },
              { value: 'end', label: 'at the end of the set' },
            ]}
            onChange={onFeedback}
          />
        </div>
        <ul class="read-drills">
          {OFFERS.map((offer) => (
            <OfferRow
              key={offer.id}
              offer={offer}
              making={making}
              wanted={offer.id === wanted}
              onStart={onStart}
            />
          ))}
        </ul>
        <p class="quiet">Drills without a named source are common practice.</p>
      </section>
      <div class="read-record">
        <ProgressCard sets={sets} ready={ready} />
        <EarlierSets sets={sets} ready={ready} unreadable={unreadable} page={earlier} onLook={onLook} />
      </div>
    </div>
  );
};
