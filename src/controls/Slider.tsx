/** A labelled range input with its value in words and one line on what it means. */
export interface SliderProps {
  readonly id: string;
  readonly label: string;
  readonly hint: string;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly value: number;
  readonly shown: string;
  readonly onValue: (value: number) => void;
}

export const Slider = ({ id, label, hint, min, max, step, value, shown, onValue }: SliderProps) => (
  <div class="slider">
    <label for={id}>{label}</label>
    <output for={id}>{shown}</output>
    <input
      id={id}
      type="range"
      min={min}
      max={max}
      step={step}
      value={value}
      aria-valuetext={shown}
      aria-describedby={`${id}-hint`}
      onInput={(event) => onValue(event.currentTarget.valueAsNumber)}
    />
    <p id={`${id}-hint`} class="hint">
      {hint}
    </p>
  </div>
);
