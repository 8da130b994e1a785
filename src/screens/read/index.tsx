/** The screen where one learns to read: connects the session to its views. Leaves out: rules of the game (session.ts). */
import { useEffect } from 'preact/hooks';
import { settings as ownSettings, type Settings } from '../../app/settings.ts';
import { openReadStore } from '../../store/database.ts';
import { createLane } from '../../worker/client.ts';
import { Asking } from './Asking.tsx';
import { Chooser } from './Chooser.tsx';
import { ReadMap } from './ReadMap.tsx';
import { Reveal } from './Reveal.tsx';
import { SummaryView } from './SummaryView.tsx';
import { type Cost, createSession, type Session } from './session.ts';
import './read.css';

const lane = createLane();

const session = createSession({
  openStore: () => openReadStore(),
  now: () => Date.now(),
  newId: () => crypto.randomUUID(),
  newSeed: () => crypto.randomUUID().slice(0, 8),
  player: () => ownSettings.player.peek(),
  async costOf(putt, pace, player, aim): Promise<Cost> {
    const cost = await lane.latest(async (engine) => ({
      holedAtAim: await engine.holedShare(putt, pace, player, aim),
      holedAtTrue: await engine.holedShare(putt, pace, player, undefined),
    }));
    if (cost === undefined) throw new Error('the question was dropped');
    return cost;
  },
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
        onStart={on.start}
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
      <ReadMap asked={stage} aim={aim} revealed={revealed} units={units} onAim={onAim} onCommit={on.commit} />
      {revealed === undefined ? (
        <Asking asked={stage} aim={aim} units={units} onAim={onAim} onCommit={on.commit} onLeave={on.leave} />
      ) : (
        <Reveal
          asked={stage}
          revealed={revealed}
          units={units}
          costProblem={on.costProblem.value}
          onNext={on.next}
          onLeave={on.leave}
        />
      )}
    </div>
  );
};

export const ReadScreen = ({ settings = ownSettings }: { settings?: Settings }) => {
  useEffect(() => void session.open(), []);
  const problem = session.storageProblem.value;
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
