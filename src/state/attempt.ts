/** Something a button does that may be refused: whether it is under way, and the sentence when it was refused. */
import { useState } from 'preact/hooks';

export interface Attempt {
  readonly busy: boolean;
  readonly problem: string | undefined;
  readonly attempt: (what: () => Promise<void>) => Promise<void>;
}

/** @param refused what to say when it rejects */
export const useAttempt = (refused: string): Attempt => {
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const attempt = async (what: () => Promise<void>): Promise<void> => {
    setBusy(true);
    setProblem(undefined);
    try {
      await what();
    } catch {
      setProblem(refused);
    } finally {
      setBusy(false);
    }
  };
  return { busy, problem, attempt };
};
