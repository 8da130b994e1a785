/** The ground the score is expected on: grass by green speed and slope, the same as on every screen, or a carpet by a speed of its own. */
import { metresToFeet } from '../../../sim/index.ts';
import { carpetHint, TakeMeasured } from '../../controls/CarpetBasis.tsx';
import { Choice } from '../../controls/Choice.tsx';
import { Field } from '../../controls/Field.tsx';
import { apply, SlopeField, SpeedField } from '../../controls/GroundFields.tsx';
import { carpetSpeed, setCarpetSpeed } from '../../state/carpet.ts';
import { LIMITS } from '../../state/situation.ts';
import { parseGreenSpeed } from '../../text/parse.ts';
import { chooseGround, chosen, GROUND_OPTIONS, groundKind } from './state.ts';

const CarpetField = () => (
  <Field
    id="carpet-speed"
    label="Speed of the carpet (ft)"
    text={String(+metresToFeet(carpetSpeed.value).toFixed(1))}
    onText={(text) => apply(parseGreenSpeed(text, LIMITS.greenSpeed), setCarpetSpeed)}
    hint={carpetHint()}
  />
);

export const GroundCard = () => (
  <section class="card" aria-labelledby="ground-title">
    <h2 id="ground-title">Your ground</h2>
    {chosen.value.ground === 'both' && (
      <Choice
        legend="Done on"
        name="practice-ground"
        value={groundKind.value}
        options={GROUND_OPTIONS}
        onChange={chooseGround}
      />
    )}
    {groundKind.value === 'carpet' ? (
      <>
        <CarpetField />
        <TakeMeasured />
        <p class="hint">A carpet counts as level.</p>
      </>
    ) : (
      <>
        <div class="practice-pair">
          <SpeedField />
          <SlopeField />
        </div>
        <p class="hint">
          The steepest you have there: each place takes what is nearest to it within the drill’s own range.
        </p>
      </>
    )}
  </section>
);
