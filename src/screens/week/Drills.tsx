/** How the week's drills are set up, on the screen and on paper; and the sheet of sessions that only paper shows. */
import type { PuttingDrill } from '../../../sim/index.ts';
import { DrillDrawing } from '../../controls/drills/DrillDrawing.tsx';
import { drillOf, nameOf } from '../../state/plans/names.ts';
import { testedIn } from '../../state/plans/plan.ts';
import { units } from '../../state/settings.ts';
import type { Plan } from '../../store/planSchema.ts';
import { drillSteps, scoreWords } from '../../text/drills.ts';
import { formatWeekday } from '../../text/format.ts';
import { expectedWords, sessionTitle } from './words.ts';

const drillsOf = ({ sessions }: Plan): PuttingDrill[] => [
  ...new Set(sessions.flatMap(({ items }) => items.flatMap((item) => drillOf(item) ?? []))),
];

export const Drills = ({ plan }: { plan: Plan }) => {
  const drills = drillsOf(plan);
  const now = units.value;
  if (drills.length === 0) return null;
  return (
    <section class="card week-drills" aria-labelledby="drills-title">
      <h2 id="drills-title">How to set them up</h2>
      <div class="week-set-ups">
        {drills.map((drill) => (
          <article key={drill.id} class="week-set-up" data-testid="week-set-up">
            <div>
              <h3>{drill.name}</h3>
              <p>{drill.purpose}</p>
              <p class="quiet">You need: {drill.needs.join(', ')}.</p>
              <ol>
                {drillSteps(drill, now).map((step) => (
                  <li key={step}>{step}</li>
                ))}
              </ol>
              <p class="quiet">
                Score: {scoreWords(drill)}. {drill.minutes} min. Source: {drill.source}.
              </p>
            </div>
            <DrillDrawing drill={drill} units={now} />
          </article>
        ))}
      </div>
    </section>
  );
};

/** Only on paper: boxes to tick and room for scores. */
export const Sheet = ({ plan }: { plan: Plan }) => {
  const tested = testedIn(plan);
  return (
    <section class="week-sheet" data-testid="week-sheet">
      {plan.sessions.map((session) => (
        <table key={session.id}>
          <caption>{sessionTitle(session)}</caption>
          <thead>
            <tr>
              <th scope="col">done</th>
              <th scope="col">what</th>
              <th scope="col">min</th>
              <th scope="col">expected</th>
              <th scope="col">score</th>
            </tr>
          </thead>
          <tbody>
            {session.items.map((item) => (
              <tr key={item.id}>
                <td>
                  <span class={item.doneOn === undefined ? 'week-box' : 'week-box ticked'} />
                </td>
                <th scope="row">
                  {nameOf(item)}
                  {plan.test?.item === item.id && ' (the test)'}
                </th>
                <td>{item.minutes}</td>
                <td>{expectedWords(item)}</td>
                <td class="week-room">{item.score ?? ''}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ))}
      {plan.test && tested && (
        <p>
          Test again on {formatWeekday(plan.test.againOn)}: “{nameOf(tested.item)}”. Score:{' '}
          {plan.test.again?.score ?? '________'}
        </p>
      )}
    </section>
  );
};
