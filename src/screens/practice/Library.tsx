/** The library: drills to choose from, by ground, error trained and minutes. Real radio buttons: arrows choose, Tab leaves. */
import { PUTTING_DRILLS } from '../../../drills/putting-drills.ts';
import { TRAINED } from '../../../sim/index.ts';
import { Choice } from '../../controls/Choice.tsx';
import { plural } from '../../text/phrases.ts';
import { choose, chosen, type DrillFilter, filter, filterDrills, LONGEST_MINUTES } from './state.ts';
import { DRILL_GROUND_WORDS, TRAINED_WORDS } from './words.ts';

const GROUNDS = [
  { value: 'any', label: 'any' },
  { value: 'grass', label: 'grass' },
  { value: 'carpet', label: 'carpet' },
] as const;
const ERRORS = [
  { value: 'any', label: 'any' },
  ...TRAINED.map((value) => ({ value, label: TRAINED_WORDS[value] })),
] as const;
const MINUTES = LONGEST_MINUTES.map((value) => ({
  value,
  label: value,
}));

const change = (part: Partial<DrillFilter>): void => {
  filter.value = { ...filter.peek(), ...part };
};

export const Library = () => {
  const { ground, trains, minutes } = filter.value;
  const shown = filterDrills(PUTTING_DRILLS, filter.value);
  const drill = chosen.value;
  return (
    <section class="card practice-library" aria-labelledby="library-title">
      <h2 id="library-title">Drills</h2>
      <div class="practice-filter">
        <Choice
          legend="Where"
          name="drill-ground"
          showLegend
          value={ground}
          options={GROUNDS}
          onChange={(value) => change({ ground: value })}
        />
        <Choice
          legend="What it trains"
          name="drill-trains"
          showLegend
          value={trains}
          options={ERRORS}
          onChange={(value) => change({ trains: value })}
        />
        <Choice
          legend="Minutes at most"
          name="drill-minutes"
          showLegend
          value={minutes}
          options={MINUTES}
          onChange={(value) => change({ minutes: value })}
        />
      </div>
      <p class="quiet" role="status">
        {shown.length === 0
          ? 'No drill is like that: allow more minutes, or another ground.'
          : plural(shown.length, 'drill')}
        {shown.length > 0 && !shown.includes(drill) && ', the one shown is not among them'}
      </p>
      <fieldset class="practice-list">
        <legend class="unseen">Drill</legend>
        {shown.map(({ id, name, trains: error, ground: on, minutes: long }) => (
          <label key={id}>
            <input
              type="radio"
              name="drill"
              value={id}
              checked={id === drill.id}
              onChange={() => choose(id)}
            />
            <span>
              {name}
              <span class="quiet">
                {TRAINED_WORDS[error]}, {DRILL_GROUND_WORDS[on]}, {long} minutes
              </span>
            </span>
          </label>
        ))}
      </fieldset>
    </section>
  );
};
