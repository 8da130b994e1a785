/** The screen where one decides: map and sentence first, then the figures, the putt and the player. */
import { useEffect } from 'preact/hooks';
import { Link } from 'wouter-preact';
import { RulesCaution } from '../../app/RulesCaution.tsx';
import { units } from '../../app/settings.ts';
import { PaceChart } from '../../charts/PaceChart.tsx';
import { answer, behind, followPutt, tableBehind } from './answer.ts';
import './decide.css';
import { MapPanel } from './MapPanel.tsx';
import { ModelLimits } from './ModelLimits.tsx';
import { PaceTable } from './PaceTable.tsx';
import { PlayerPanel } from './PlayerPanel.tsx';
import { PuttInputs } from './PuttInputs.tsx';
import { Verdict } from './Verdict.tsx';

const Chart = () => {
  const now = answer.value;
  if (now === undefined) return null;
  return (
    <PaceChart
      comparison={now.comparison}
      die={now.die.pace}
      firm={now.firm.pace}
      best={now.comparison.best?.fewestPutts}
      units={units.value}
      stale={behind.value || tableBehind.value}
    />
  );
};

export const DecideScreen = () => {
  useEffect(followPutt, []);
  return (
    <div class="decide">
      <div class="decide-verdict">
        <Verdict />
      </div>
      <div class="decide-map">
        <MapPanel />
        <p class="read-link">
          <Link href="/read">Read it yourself</Link>
        </p>
      </div>
      <div class="decide-figures">
        <RulesCaution />
        <PaceTable />
        <Chart />
        <ModelLimits />
      </div>
      <div class="decide-inputs">
        <PuttInputs />
        <PlayerPanel />
      </div>
    </div>
  );
};
