/** How far long work is, and the ways to stop it and go on. Leaves out: the work itself, and where the line stands. */
export interface WorkLineProps {
  readonly stopped: boolean;
  /** undefined: nothing is being worked out. */
  readonly work: { readonly words: string; readonly share: number } | undefined;
  /** Said when nothing is being worked out. */
  readonly rest: string;
  readonly onStop: () => void;
  readonly onResume: () => void;
}

export const WorkLine = ({ stopped, work, rest, onStop, onResume }: WorkLineProps) => {
  if (stopped)
    return (
      <>
        <span>Stopped.</span>
        <button type="button" class="plain" onClick={onResume}>
          Go on
        </button>
      </>
    );
  if (work === undefined) return <span>{rest}</span>;
  return (
    <>
      <span data-testid="work">
        {work.words}, {Math.floor(100 * work.share)}%
      </span>
      <progress aria-label={work.words} max={1} value={work.share} />
      <button type="button" class="plain" onClick={onStop}>
        Stop
      </button>
    </>
  );
};
