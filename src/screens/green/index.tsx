/** The whole green: which side to leave an approach on. Sentence first, then map and table, then the green and the player. */
import { useEffect } from 'preact/hooks';
import { GreenFields, GroundChoice, SlopeField, SpeedField } from '../../controls/GroundFields.tsx';
import { ModelChoices } from '../../controls/ModelChoices.tsx';
import { PlayerPanel } from '../../controls/PlayerPanel.tsx';
import { RulesCaution } from '../../controls/RulesCaution.tsx';
import { ground } from '../../state/situation.ts';
import '../../controls/answers.css';
import './green.css';
import { GreenDetails } from './GreenDetails.tsx';
import { GreenMapPanel } from './GreenMapPanel.tsx';
import { followMap } from './mapWork.ts';
import { SideAnswer } from './SideAnswer.tsx';
import { SideTable } from './SideTable.tsx';

const GreenInputs = () => (
  <section class="card" aria-labelledby="green-title">
    <h2 id="green-title">The green</h2>
    <GroundChoice />
    <div class="fields">
      {ground.value === 'plane' && <SlopeField />}
      <SpeedField />
      {ground.value === 'green' && <GreenFields />}
    </div>
    <p class="hint">
      {ground.value === 'plane'
        ? 'Straight ground, as steep everywhere: where the hole is cut makes no difference.'
        : 'Drag the hole to another place, or pick it and use the arrow keys.'}{' '}
      The same green and hole as on the other screens.
    </p>
    <ModelChoices />
  </section>
);

export const GreenScreen = () => {
  useEffect(followMap, []);
  return (
    <div class="green">
      <div class="green-answer">
        <SideAnswer />
      </div>
      <div class="green-map">
        <GreenMapPanel />
      </div>
      <div class="green-figures">
        <SideTable />
        <RulesCaution />
        <GreenDetails />
      </div>
      <div class="green-ground">
        <GreenInputs />
      </div>
      <div class="green-player">
        <PlayerPanel />
      </div>
    </div>
  );
};
