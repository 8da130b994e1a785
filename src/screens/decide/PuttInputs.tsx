/** Typing the putt: ground, length, slope, clock, green speed and the two paces. */
import { Field } from '../../controls/Field.tsx';
import { apply, GreenFields, GroundChoice, SlopeField, SpeedField } from '../../controls/GroundFields.tsx';
import { ModelChoices } from '../../controls/ModelChoices.tsx';
import { units } from '../../state/settings.ts';
import { clock, diePace, firmPace, ground, LIMITS, length, placeBall } from '../../state/situation.ts';
import { formatClock, formatLength, formatShort } from '../../text/format.ts';
import { parseClock, parseLength, parsePace } from '../../text/parse.ts';

export const PuttInputs = () => {
  const unit = units.value;
  const plane = ground.value === 'plane';
  return (
    <section class="card" aria-labelledby="putt-title">
      <h2 id="putt-title">The putt</h2>
      <GroundChoice />
      <div class="fields">
        <Field
          id="length"
          label={`Length (${unit === 'imperial' ? 'ft' : 'm'})`}
          text={formatLength(length.value, unit).replace(/ .*/, '')}
          onText={(text) =>
            apply(parseLength(text, unit, LIMITS.length), (value) => placeBall(value, clock.peek()))
          }
        />
        <Field
          id="clock"
          label="Ball at (clock)"
          text={formatClock(clock.value)}
          inputMode="text"
          onText={(text) => apply(parseClock(text), (value) => placeBall(length.peek(), value))}
        />
        {plane && <SlopeField />}
        <SpeedField />
        {!plane && <GreenFields />}
        <Field
          id="die-pace"
          label={`Die: stops past (${unit === 'imperial' ? 'in' : 'cm'})`}
          text={formatShort(diePace.value, unit).replace(/ .*/, '')}
          onText={(text) =>
            apply(parsePace(text, unit, { min: LIMITS.pace.min, max: firmPace.peek() - 0.01 }), (value) => {
              diePace.value = value;
            })
          }
        />
        <Field
          id="firm-pace"
          label={`Firm: stops past (${unit === 'imperial' ? 'in' : 'cm'})`}
          text={formatShort(firmPace.value, unit).replace(/ .*/, '')}
          onText={(text) =>
            apply(parsePace(text, unit, { min: diePace.peek() + 0.01, max: LIMITS.pace.max }), (value) => {
              firmPace.value = value;
            })
          }
        />
      </div>
      <p class="hint">
        The hole is the centre of the clock: 12:00 is straight uphill of it, 6:00 below it, 3:00 pin-high.
        Green speed is a Stimpmeter reading. Past: where the ball would stop if the hole were covered.
      </p>
      <ModelChoices />
    </section>
  );
};
