/** What each error costs this player in strokes, and whether firmer putting pays. Leaves out: figures (sim/costs), words (text/costs.ts). */
import { useEffect } from 'preact/hooks';
import { PlayerPanel } from '../../controls/PlayerPanel.tsx';
import { RulesCaution } from '../../controls/RulesCaution.tsx';
import { costJob } from '../../state/costs/work.ts';
import { followRecords, readingProblem } from '../../state/shownRecords.ts';
import { ByDistance } from './ByDistance.tsx';
import { CostAnswer } from './CostAnswer.tsx';
import { Firmer } from './Firmer.tsx';
import { Inputs } from './Inputs.tsx';
import { Savings } from './Savings.tsx';
import { TwoSteps } from './TwoSteps.tsx';
import '../../controls/answers.css';
import './costs.css';

export const CostsScreen = () => {
  useEffect(followRecords, []);
  useEffect(costJob.follow, []);
  return (
    <div class="costs">
      <div class="costs-main">
        {readingProblem.value !== undefined && (
          <p class="problem" role="alert">
            {readingProblem.value}
          </p>
        )}
        <CostAnswer />
        <Savings />
        <TwoSteps />
        <ByDistance />
        <Firmer />
      </div>
      <div class="costs-side">
        <PlayerPanel />
        <Inputs />
        <RulesCaution />
      </div>
    </div>
  );
};
