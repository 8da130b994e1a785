/** A small set of exclusive choices as real radio buttons, drawn as one row of words. */
export interface ChoiceProps<Value extends string> {
  readonly legend: string;
  /** Radio group name, unique on the page. */
  readonly name: string;
  readonly value: Value;
  readonly options: readonly { readonly value: Value; readonly label: string }[];
  readonly onChange: (value: Value) => void;
  readonly showLegend?: boolean;
}

export const Choice = <Value extends string>({
  legend,
  name,
  value,
  options,
  onChange,
  showLegend = false,
}: ChoiceProps<Value>) => (
  <fieldset class="choice">
    <legend class={showLegend ? undefined : 'unseen'}>{legend}</legend>
    <div class="choice-row">
      {options.map((option) => (
        <label key={option.value}>
          <input
            type="radio"
            name={name}
            value={option.value}
            checked={option.value === value}
            onChange={() => onChange(option.value)}
          />
          <span>{option.label}</span>
        </label>
      ))}
    </div>
  </fieldset>
);
