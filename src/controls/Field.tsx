/**
 * A labelled text field that takes a value only when it is good. What is typed stays as typed while focused; a bad value
 * shows its sentence under the field and the last good value stays in force.
 */
import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

export interface FieldProps {
  readonly id: string;
  readonly label: string;
  /** The value in force, as text in the person's units. */
  readonly text: string;
  /** Takes the typed text; returns a problem sentence or undefined. */
  readonly onText: (text: string) => string | undefined;
  readonly hint?: ComponentChildren;
  readonly inputMode?: 'decimal' | 'text';
  /** What is wrong with `text` itself, where the person's bad input is kept as it stands. */
  readonly problem?: string;
}

export const Field = ({
  id,
  label,
  text,
  onText,
  hint,
  inputMode = 'decimal',
  problem: standing,
}: FieldProps) => {
  const [draft, setDraft] = useState<string | undefined>(undefined);
  const [refused, setProblem] = useState<string | undefined>(undefined);
  const focused = useRef(false);
  const shown = draft ?? text;
  const problem = refused ?? standing;

  // A drag changes the value in force: an old draft and its complaint no longer speak of it.
  useEffect(() => {
    if (focused.current) return;
    setDraft(undefined);
    setProblem(undefined);
  }, [text]);

  const described = [hint ? `${id}-hint` : '', problem ? `${id}-problem` : ''].filter(Boolean).join(' ');
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="text"
        inputMode={inputMode}
        autocomplete="off"
        spellcheck={false}
        value={shown}
        aria-invalid={problem !== undefined}
        aria-describedby={described || undefined}
        onFocus={() => {
          focused.current = true;
        }}
        onInput={(event) => {
          const typed = event.currentTarget.value;
          setDraft(typed);
          setProblem(onText(typed));
        }}
        onBlur={() => {
          focused.current = false;
          if (refused === undefined) setDraft(undefined);
        }}
        onKeyDown={(event) => {
          if (event.key !== 'Escape') return;
          setDraft(undefined);
          setProblem(undefined);
        }}
      />
      {hint && (
        <p id={`${id}-hint`} class="hint">
          {hint}
        </p>
      )}
      <p id={`${id}-problem`} class="problem" role="alert">
        {problem}
      </p>
    </div>
  );
};
