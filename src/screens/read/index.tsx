/** The screen where one learns to read: connects the session to its views. Leaves out: rules of the game (session.ts). */
import { useEffect } from 'preact/hooks';
import { makeReadSet } from '../../../sim/index.ts';
import { ownDatabase } from '../../app/records.ts';
import { settings as ownSettings, type Settings } from '../../app/settings.ts';
import { readStoreOf } from '../../store/readSets.ts';
import { createReadingClient } from '../../worker/readingClient.ts';
import { AimPanel, Question } from './Asking.tsx';
import { Chooser } from './Chooser.tsx';
import { ReadMap } from './ReadMap.tsx';
import { Figures, Verdict } from './Reveal.tsx';
import { SummaryView } from './SummaryView.tsx';
import { createSession, type Session } from './session.ts';
import './read.css';

const ask = createReadingClient();

const session = createSession({
  openStore: async () => {
    const { database, problem } = await ownDatabase();
    return { store: readStoreOf(database), problem };
  },
  now: () => Date.now(),
  newId: () => crypto.randomUUID(),
  newSeed: () => crypto.randomUUID().slice(0, 8),
  player: () => ownSettings.player.peek(),
  // Greens take a second or so: off the page's thread, and on it only where no worker can be had.
  makeSet: (drill, seed) =>
    ask((engine) => engine.makeSet(drill, seed)).catch(() => makeReadSet(drill, seed)),
  costOf: (putt, pace, player, aim) => ask((engine) => engine.costOf(putt, pace, player, aim)),
});

const Stages = ({ settings, on }: { settings: Settings; on: Session }) => {
  const units = settings.units.value;
  const stage = on.stage.value;
  const aim = on.aim.value;
  if (stage.kind === 'choosing')
    return (
      <Chooser
        sets={on.sets.value}
        ready={on.ready.value}
        unreadable={on.unreadable.value}
        making={on.making.value}
        onStart={(drill) => void on.start(drill)}
        onResume={on.resume}
        onLook={on.look}
      />
    );
  if (stage.kind === 'summary')
    return (
      <SummaryView set={stage.set} units={units} onLeave={on.leave} onResume={() => on.resume(stage.set)} />
    );
  const revealed = stage.kind === 'revealed' ? stage.revealed : undefined;
  const onAim = (next: number): void => {
    on.aim.value = next;
  };
  return (
    <div class="read-question">
      {revealed === undefined ? (
        <Question asked={stage} units={units} />
      ) : (
        <Verdict
          asked={stage}
          revealed={revealed}
          units={units}
          costProblem={on.costProblem.value}
          saved={on.saved.value}
          onNext={on.next}
          onLeave={on.leave}
        />
      )}
      <ReadMap asked={stage} aim={aim} revealed={revealed} units={units} onAim={onAim} onCommit={on.commit} />
      {revealed === undefined ? (
        <AimPanel
          asked={stage}
          aim={aim}
          units={units}
          onAim={onAim}
          onCommit={on.commit}
          onLeave={on.leave}
        />
      ) : (
        <Figures asked={stage} revealed={revealed} units={units} />
      )}
    </div>
  );
};

export const ReadScreen = ({ settings = ownSettings }: { settings?: Settings }) => {
  useEffect(() => void session.open(), []);
  const problem = session.storageProblem.value ?? session.makingProblem.value;
  return (
    <>
      {problem && (
        <p class="problem read-storage" role="alert">
          {problem}
        </p>
      )}
      <Stages settings={settings} on={session} />
    </>
  );
};
