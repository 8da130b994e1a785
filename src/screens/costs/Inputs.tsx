/** Usual pace and greens, and what would change the answer. The errors have a panel of their own (controls/PlayerPanel.tsx). */
import { inchesToMetres, metresToInches } from '../../../sim/index.ts';
import { Choice } from '../../controls/Choice.tsx';
import { Slider } from '../../controls/Slider.tsx';
import { greens, mix, PACES, usualPace } from '../../state/costs/question.ts';
import { fitInUse, knownPlayer, player, units } from '../../state/settings.ts';
import { changeWords } from '../../text/costs.ts';
import { formatShort } from '../../text/format.ts';

const SPEEDS = [
  { value: 'club', label: 'club greens' },
  { value: 'fast', label: 'tournament greens' },
] as const;

/** The slider's step is one a person would say: an inch, or two centimetres. */
const UsualPace = () => {
  const imperial = units.value === 'imperial';
  const toShown = imperial ? metresToInches : (metres: number) => metres * 100;
  const fromShown = imperial ? inchesToMetres : (centimetres: number) => centimetres / 100;
  const step = imperial ? 1 : 2;
  const round = (metres: number): number => Math.round(toShown(metres) / step) * step;
  return (
    <Slider
      id="usual-pace"
      label="Your usual pace"
      hint="How far past the hole your putts are meant to stop, if they miss. 17 in is the published figure for all putts."
      min={round(PACES.min)}
      max={round(PACES.max)}
      step={step}
      value={round(usualPace.value)}
      shown={`${formatShort(usualPace.value, units.value)} past`}
      onValue={(value) => {
        usualPace.value = fromShown(value);
      }}
    />
  );
};

/** How well the errors are known. */
const whose = (): 'fit' | 'family' | 'one' => {
  if (fitInUse.value !== undefined) return 'fit';
  return knownPlayer.value.members.length > 1 ? 'family' : 'one';
};

export const Inputs = () => (
  <section class="card" aria-labelledby="habits-title">
    <h2 id="habits-title">Your pace and your greens</h2>
    <UsualPace />
    <Choice
      legend="Greens"
      name="greens"
      value={greens.value}
      options={SPEEDS}
      onChange={(value) => {
        greens.value = value;
      }}
    />
    <p class="hint">
      {greens.value === 'club' ? 'Green speed 9.5 ft' : 'Green speed 10.5 ft'}, planes of 0.5 to 3%, from all
      round the hole. What the mix leaves out: tiers and double breaks.
    </p>
    <h3>What would change it</h3>
    <ul class="costs-list">
      {changeWords(mix.value, player.value, usualPace.value, units.value, whose()).map((words) => (
        <li key={words}>{words}</li>
      ))}
    </ul>
  </section>
);
