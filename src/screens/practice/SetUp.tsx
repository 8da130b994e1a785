/** How the drill is set up and played: drawing, what it needs, steps with their numbers, scoring, source, and the order where it is drawn by lot. */
import { useState } from 'preact/hooks';
import { type PuttingDrill, strokeOrder } from '../../../sim/index.ts';
import { DrillDrawing } from '../../controls/drills/DrillDrawing.tsx';
import { nameOf } from '../../controls/drills/drillPlan.ts';
import { units } from '../../state/settings.ts';
import { drillSteps, scoreWords } from '../../text/drills.ts';
import { chosen } from './state.ts';

/** An order drawn by lot; by the letters of the drawing. */
const Order = ({ drill }: { drill: PuttingDrill }) => {
  const [lot, setLot] = useState(1);
  return (
    <div class="practice-order">
      <p data-testid="order">
        Order of places:{' '}
        {strokeOrder(drill, lot)
          .map((station) => nameOf(station, drill))
          .join(', ')}
        .
      </p>
      <button type="button" class="plain" onClick={() => setLot(lot + 1)}>
        Another order
      </button>
    </div>
  );
};

export const SetUp = () => {
  const drill = chosen.value;
  return (
    <section class="card" aria-labelledby="set-up-title" data-testid="set-up">
      <h2 id="set-up-title">Set-up</h2>
      <div class="practice-set-up">
        <DrillDrawing drill={drill} units={units.value} />
        <div>
          <p>
            <strong>You need:</strong> {drill.needs.join(', ')}.
          </p>
          <ol>
            {drillSteps(drill, units.value).map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
          {drill.order === 'random' && <Order key={drill.id} drill={drill} />}
          <p>
            <strong>Score:</strong> {scoreWords(drill)}.
          </p>
          <p class="hint">Source: {drill.source}.</p>
        </div>
      </div>
    </section>
  );
};
