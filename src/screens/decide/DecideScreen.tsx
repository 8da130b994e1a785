/** The screen where one decides: map and sentence first (the map on top, so that nothing above it moves it while one drags), then the figures, the putt and the player. */
import { useEffect } from 'preact/hooks';
import { Link } from 'wouter-preact';
import { PaceChart } from '../../charts/PaceChart.tsx';
import { RulesCaution } from '../../controls/RulesCaution.tsx';
import { units } from '../../state/settings.ts';
import { followPutt, paces, pacesBehind } from './answer.ts';
import '../../controls/answers.css';
import './decide.css';
import { PlayerPanel } from '../../controls/PlayerPanel.tsx';
import { followLines } from './lines.ts';
import { MapPanel } from './MapPanel.tsx';
import { MarginTable } from './MarginTable.tsx';
import { ModelLimits } from './ModelLimits.tsx';
import { PaceTable } from './PaceTable.tsx';
import { PuttInputs } from './PuttInputs.tsx';
import { Verdict } from './Verdict.tsx';

const Chart = () => {
  const now = paces.value;
  // Its place is kept, so that nothing below jumps when it comes.
  if (now === undefined)
    return (
      <section class="card" aria-labelledby="chart-title">
        <h2 id="chart-title">Pace</h2>
        <p class="chart quiet">Working out the next putts…</p>
      </section>
    );
  return (
    <PaceChart
      comparison={now.comparison}
      die={now.die}
      firm={now.firm}
      best={now.best?.pace}
      units={units.value}
      stale={pacesBehind.value}
    />
  );
};

export const DecideScreen = () => {
  useEffect(followLines, []);
  useEffect(followPutt, []);
  return (
    <div class="decide">
      <div class="decide-map">
        <MapPanel />
      </div>
      <div class="decide-verdict">
        <Verdict />
      </div>
      <div class="decide-figures">
        <RulesCaution />
        <PaceTable />
        <Chart />
        <ModelLimits />
        <p class="read-link">
          Could you have read it? <Link href="/read">Read it yourself</Link>: name the break first, then see.
        </p>
      </div>
      <div class="decide-putt">
        <PuttInputs />
      </div>
      <div class="decide-margin">
        <MarginTable />
      </div>
      <div class="decide-player">
        <PlayerPanel />
      </div>
    </div>
  );
};
