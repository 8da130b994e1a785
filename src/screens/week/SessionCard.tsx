/** One session: its drills and sets with what to expect and why, ticks, scores, and what may be changed. */
import { type PuttingDrill, scoreRange } from '../../../sim/index.ts';
import { Field } from '../../controls/Field.tsx';
import { drillOf, nameOf } from '../../state/plans/names.ts';
import {
  type AskedSession,
  insteadOf,
  isTouched,
  moveSession,
  refillSession,
  scoreItem,
  swapItem,
  tickItem,
} from '../../state/plans/plan.ts';
import { units } from '../../state/settings.ts';
import { localDay } from '../../store/day.ts';
import type { Plan, PlanItem, PlanSession } from '../../store/planSchema.ts';
import { scoreWords } from '../../text/drills.ts';
import { changePlan } from './kept.ts';
import { daysOfWeek } from './making.ts';
import { SessionFields } from './SessionFields.tsx';
import { expectedWords, minutesWords, sessionTitle, whyWords } from './words.ts';

/** A typed score of a drill. @returns undefined for nothing typed, a sentence for what is no score */
const parseScore = (text: string, drill: PuttingDrill): number | string | undefined => {
  const typed = text.trim();
  if (typed === '') return undefined;
  const score = Number(typed);
  const { least, most } = scoreRange(drill);
  return Number.isInteger(score) && score >= least && score <= most
    ? score
    : `Got “${typed}”, expected a whole number from ${least} to ${most}: type the score again.`;
};

export const ScoreField = ({
  id,
  label,
  drill,
  score,
  onScore,
}: {
  id: string;
  label: string;
  drill: PuttingDrill;
  score: number | undefined;
  onScore: (score: number | undefined) => void;
}) => (
  <Field
    id={id}
    label={label}
    text={score === undefined ? '' : String(score)}
    onText={(text) => {
      const found = parseScore(text, drill);
      if (typeof found === 'string') return found;
      onScore(found);
      return undefined;
    }}
  />
);

const Instead = ({ session, item }: { session: PlanSession; item: PlanItem }) => {
  const others = insteadOf(session, item).filter(({ id }) => id !== item.activity);
  if (others.length === 0 || item.doneOn !== undefined || item.score !== undefined) return null;
  return (
    <div class="field">
      <label for={`instead-${item.id}`}>
        Instead<span class="unseen"> of {nameOf(item)}</span>
      </label>
      <select
        id={`instead-${item.id}`}
        value=""
        onChange={(event) => {
          const chosen = others.find(({ id }) => id === event.currentTarget.value);
          if (chosen) void changePlan((plan) => swapItem(plan, item.id, chosen));
        }}
      >
        <option value="">as planned</option>
        {others.map(({ id, name, minutes }) => (
          <option key={id} value={id}>
            {name}, {minutes} min
          </option>
        ))}
      </select>
    </div>
  );
};

const OPEN_WORDS = { drill: 'Open in Practise', reading: 'Open in Read it yourself' } as const;
/** To the screen where it is done, with it chosen. */
const linkOf = ({ kind, activity }: PlanItem, { ground }: PlanSession): string =>
  kind === 'reading' ? `#/read/${activity}` : `#/practice/${activity}/${ground}`;

const Item = ({ session, item, isTest }: { session: PlanSession; item: PlanItem; isTest: boolean }) => {
  const drill = drillOf(item);
  return (
    <li class={item.doneOn === undefined ? undefined : 'done'} data-testid="week-item">
      <label class="week-tick">
        <input
          type="checkbox"
          checked={item.doneOn !== undefined}
          onChange={(event) => {
            const day = event.currentTarget.checked ? localDay(Date.now()) : undefined;
            void changePlan((plan) => tickItem(plan, item.id, day));
          }}
        />
        <span>
          <strong>{nameOf(item)}</strong>, {item.minutes} min{isTest && ', the test'}
        </span>
      </label>
      <p class="week-expected">
        Expected: {expectedWords(item)}
        {drill && <span class="quiet"> ({scoreWords(drill)})</span>}
      </p>
      <p class="hint">{whyWords(item)}</p>
      <div class="week-tools">
        {drill && (
          <ScoreField
            id={`score-${item.id}`}
            label="Your score"
            drill={drill}
            score={item.score}
            onScore={(score) => void changePlan((plan) => scoreItem(plan, item.id, score))}
          />
        )}
        <Instead session={session} item={item} />
        <a href={linkOf(item, session)} aria-label={`${OPEN_WORDS[item.kind]}: ${nameOf(item)}`}>
          {OPEN_WORDS[item.kind]}
        </a>
      </div>
    </li>
  );
};

export const SessionCard = ({ plan, session }: { plan: Plan; session: PlanSession }) => {
  const change = ({ day, ...rest }: Partial<AskedSession>): void =>
    void changePlan((now) =>
      day === undefined ? refillSession(now, session.id, rest) : moveSession(now, session.id, day),
    );
  const fixed = isTouched(session);
  // Words of lengths follow the person's units.
  void units.value;
  return (
    <section class="card week-session" aria-labelledby={`session-${session.id}`} data-testid="week-session">
      <h2 id={`session-${session.id}`}>{sessionTitle(session)}</h2>
      {session.items.length === 0 ? (
        <p>Nothing fits into this session: give it more minutes, or another ground.</p>
      ) : (
        <ol class="week-items">
          {session.items.map((item) => (
            <Item key={item.id} session={session} item={item} isTest={plan.test?.item === item.id} />
          ))}
        </ol>
      )}
      <p class="quiet">Planned: {minutesWords(session)}.</p>
      <details>
        <summary>Change this session</summary>
        <SessionFields
          id={`session-${session.id}`}
          name={sessionTitle(session)}
          session={session}
          days={daysOfWeek(plan.start)}
          fixed={fixed}
          onChange={change}
        />
        <p class="hint">
          {fixed
            ? 'Something of it is done: only its day can change.'
            : 'Other minutes or another ground fill it anew; the other sessions stay.'}
        </p>
      </details>
    </section>
  );
};
