/** Asked once: the pace one usually putts at, which no record tells from a habit of hitting too hard or too soft. Kept in the settings. */
import { useSignal } from '@preact/signals';
import { DIE_PACE, FIRM_PACE, PLAIN_PACE } from '../../../sim/index.ts';
import { Field } from '../../controls/Field.tsx';
import { apply } from '../../controls/GroundFields.tsx';
import { MEANT_PACE_RANGE, meantPace, units } from '../../state/settings.ts';
import { formatShort } from '../../text/format.ts';
import { parsePace } from '../../text/parse.ts';
import { NOT_SAID, PACE_ASKED, PACE_WHY, paceAnswers, paceSaid } from './meantPaceWords.ts';

const PACES = [DIE_PACE, PLAIN_PACE, FIRM_PACE] as const;

export const UsualPace = () => {
  const again = useSignal(false);
  const said = meantPace.value;
  const unit = units.value;
  const take = (pace: number | 'skipped'): void => {
    meantPace.value = pace;
    again.value = false;
  };
  if (said !== undefined && !again.value)
    return (
      <section class="card" aria-label="Your usual pace" data-testid="usual-pace">
        <p>{said === 'skipped' ? NOT_SAID : paceSaid(said, unit)}</p>
        <p>
          <button
            type="button"
            class="plain"
            onClick={() => {
              again.value = true;
            }}
          >
            {said === 'skipped' ? 'Say it after all' : 'Change that'}
          </button>
        </p>
      </section>
    );
  return (
    <section class="card" aria-labelledby="usual-pace-title" data-testid="usual-pace">
      <h2 id="usual-pace-title">{PACE_ASKED}</h2>
      <p class="hint">{PACE_WHY}</p>
      <p class="errors-use">
        {paceAnswers(PACES, unit).map((words, i) => (
          <button key={words} type="button" onClick={() => take(PACES[i])}>
            {words}
          </button>
        ))}
      </p>
      <div class="errors-use">
        <Field
          id="usual-pace-own"
          label={`Or past the hole (${unit === 'imperial' ? 'in' : 'cm'})`}
          text={typeof said === 'number' ? formatShort(said, unit).replace(/ .*/, '') : ''}
          onText={(text) => apply(parsePace(text, unit, MEANT_PACE_RANGE), take)}
        />
        <button type="button" class="plain" onClick={() => take('skipped')}>
          I would rather not say
        </button>
      </div>
    </section>
  );
};
