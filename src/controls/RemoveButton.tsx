/** Deleting a record: asked once more, and said when the device refuses. */
import { useState } from 'preact/hooks';

export const RemoveButton = ({ what, onRemove }: { what: string; onRemove: () => Promise<void> }) => {
  const [asked, setAsked] = useState(false);
  const [refused, setRefused] = useState(false);
  const remove = async (): Promise<void> => {
    try {
      await onRemove();
    } catch {
      setRefused(true);
    }
  };
  if (!asked)
    return (
      <button type="button" class="plain" aria-label={`Delete ${what}`} onClick={() => setAsked(true)}>
        Delete
      </button>
    );
  return (
    // biome-ignore lint/a11y/useSemanticElements: a group of a question and its two answers, not form fields
    <span class="rec-remove" role="group" aria-label={`Delete ${what}?`}>
      <span class="quiet">{refused ? 'The device refused: try again.' : 'For good?'}</span>
      <button type="button" onClick={() => void remove()}>
        Delete
      </button>
      <button type="button" onClick={() => setAsked(false)}>
        Keep
      </button>
    </span>
  );
};
