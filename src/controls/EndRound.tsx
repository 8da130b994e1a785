/** Ending a round: one button, and one question before it counts. */
import { useState } from 'preact/hooks';
import { endRound, type RoundChange } from '../state/rounds.ts';
import type { RoundInHand } from '../store/records.ts';
import { countWords, holesWritten, puttsCounted } from '../text/record.ts';

const PROBLEMS: Readonly<Record<Exclude<RoundChange, 'done'>, string>> = {
  changedElsewhere:
    'The round was changed in another tab meanwhile, and is still open. It is shown as it is now: press again.',
  refused:
    'The device did not write the end of the round (full or forbidden storage): it is still open. Free some space, and press again.',
};

export interface EndRoundProps {
  readonly inHand: RoundInHand;
  /** A putt was tapped and is not saved. */
  readonly unsaved?: boolean;
}

export const EndRound = ({ inHand, unsaved = false }: EndRoundProps) => {
  const [asked, setAsked] = useState(false);
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const end = async (): Promise<void> => {
    const change = await endRound(inHand);
    setProblem(change === 'done' ? undefined : PROBLEMS[change]);
  };
  if (!asked)
    return (
      <button type="button" class="end-ask" onClick={() => setAsked(true)}>
        End the round
      </button>
    );
  return (
    // biome-ignore lint/a11y/useSemanticElements: a group of a question and its two answers, not form fields
    <div class="end-round" role="group" aria-label="End the round?">
      <p>
        Saved: {countWords(puttsCounted(inHand.putts), 'putt')} on{' '}
        {countWords(holesWritten(inHand.round, inHand.putts), 'hole')}.
        {unsaved && ' The putt you are entering is not saved, and stays out.'} End the round?
      </p>
      {problem && (
        <p class="problem" role="alert">
          {problem}
        </p>
      )}
      <div class="end-answers">
        <button type="button" onClick={() => setAsked(false)}>
          Not yet
        </button>
        <button type="button" class="end-yes" onClick={() => void end()}>
          Yes, end it
        </button>
      </div>
    </div>
  );
};
