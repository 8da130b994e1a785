/** The screen where putts are written down: connects the records, the recorder and its views. Leaves out: what a tap does. */
import { effect, untracked } from '@preact/signals';
import { useState } from 'preact/hooks';
import { Link } from 'wouter-preact';
import { entering } from '../../state/offline.ts';
import { openRound, ownRecords, recordsProblem } from '../../state/records.ts';
import { endedRound, type RoundChange, reopenRound } from '../../state/rounds.ts';
import { units } from '../../state/settings.ts';
import { countWords, formatTapped, holesWritten, puttsCounted } from '../../text/record.ts';
import { keepDraft, loadDraft } from './keptDraft.ts';
import { PracticeCard } from './PracticeCard.tsx';
import { RecentRounds } from './RecentRounds.tsx';
import { RoundView } from './RoundView.tsx';
import { createRecorder } from './recorder.ts';
import { StartRound } from './StartRound.tsx';
import './record.css';

const recorder = createRecorder({
  records: ownRecords,
  now: () => Date.now(),
  newId: () => crypto.randomUUID(),
  keepDraft,
  loadDraft,
});

effect(() => {
  const now = openRound.value;
  if (now !== 'unknown') untracked(() => recorder.follow(now === 'none' ? undefined : now));
});
effect(() => {
  entering.value = recorder.unsaved.value;
});

/** What a finished round leaves to say: no analysis. */
const Ended = () => {
  const ended = endedRound.value;
  if (ended === undefined) return null;
  return (
    <section class="card rec-ended" role="status" data-testid="ended">
      <p>
        Round ended: {countWords(puttsCounted(ended.putts), 'putt')} on{' '}
        {countWords(holesWritten(ended.round, ended.putts), 'hole')}.{' '}
        <Link href="/review">Review it at home.</Link>
      </p>
    </section>
  );
};

const REOPEN_PROBLEMS: Readonly<Record<Exclude<RoundChange, 'done'>, string>> = {
  changedElsewhere: 'That round is gone, or another one is open: end that one first.',
  refused:
    'The device refused to open the round again (full or forbidden storage). Free some space, and press again.',
};

/** A putt tapped in a round that was ended elsewhere before it was saved. */
const LeftOver = () => {
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const left = recorder.leftOver.value;
  if (left === undefined) return null;
  const open = async (): Promise<void> => {
    const change = await reopenRound(left.roundId);
    setProblem(change === 'done' ? undefined : REOPEN_PROBLEMS[change]);
  };
  return (
    <section class="card" data-testid="left-over">
      <h2>A putt that was not saved</h2>
      <p>
        Hole {left.hole}
        {left.distance !== undefined && `, ${formatTapped(left.distance, units.value)}`}: the round was ended
        before it was saved.
      </p>
      {problem && (
        <p class="problem" role="alert">
          {problem}
        </p>
      )}
      <div class="rules-ways">
        <button type="button" onClick={() => void open()}>
          Open that round again
        </button>
        <button type="button" onClick={recorder.drop}>
          Drop the putt
        </button>
      </div>
    </section>
  );
};

export const RecordScreen = () => {
  const now = recorder.round.value;
  const unknown = openRound.value === 'unknown';
  return (
    <div class="record">
      {recordsProblem.value && (
        <p class="problem" role="alert">
          {recordsProblem.value}
        </p>
      )}
      {now ? (
        <RoundView key={now.round.id} on={recorder} inHand={now} />
      ) : unknown ? (
        <p class="quiet">Looking up your records…</p>
      ) : (
        <div class="rec-idle">
          <Ended />
          <LeftOver />
          <StartRound />
          <PracticeCard />
          <RecentRounds />
        </div>
      )}
    </div>
  );
};
