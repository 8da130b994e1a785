/** Rows and grids of large buttons of which one is chosen; tapping it again takes the choice back where that makes sense. */
import type { ComponentChildren } from 'preact';

export interface Pick<Value> {
  readonly value: Value;
  readonly label: string;
  readonly drawing?: ComponentChildren;
}

export interface PicksProps<Value> {
  readonly legend: string;
  readonly showLegend?: boolean;
  readonly picks: readonly Pick<Value>[];
  readonly isChosen: (value: Value) => boolean;
  readonly onPick: (value: Value) => void;
  /** Numbers stand in a grid of five; words in one row. */
  readonly grid?: boolean;
}

export const Picks = <Value extends string | number | boolean>({
  legend,
  showLegend = false,
  picks,
  isChosen,
  onPick,
  grid = false,
}: PicksProps<Value>) => (
  <fieldset class="rec-picks">
    <legend class={showLegend ? 'quiet' : 'unseen'}>{legend}</legend>
    <div class={grid ? 'rec-grid' : 'rec-row'}>
      {picks.map(({ value, label, drawing }) => (
        <button
          key={String(value)}
          type="button"
          aria-pressed={isChosen(value)}
          data-pick={String(value)}
          onClick={() => onPick(value)}
        >
          {drawing}
          <span>{label}</span>
        </button>
      ))}
    </div>
  </fieldset>
);
