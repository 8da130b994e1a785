/** The screen where one learns to read: connects the session to its views. Leaves out: rules of the game (session.ts). */
import { useEffect, useState } from 'preact/hooks';
import { useLocation, useParams } from 'wouter-preact';
import {
  chooseNext,
  makePaceSet,
  makeReadSet,
  makeSlopeSet,
  type Question,
  type ReadDrill,
} from '../../../sim/index.ts';
import { usePage } from '../../controls/Pages.tsx';
import { type FixedOffer, PACE_SET, SLOPE_SET } from '../../state/readOffers.ts';
import { ownDatabase } from '../../state/records.ts';
import { settings as ownSettings, type Settings } from '../../state/settings.ts';
import { readStoreOf } from '../../store/readSets.ts';
import type { Units } from '../../text/format.ts';
import { createReadingClient } from '../../worker/readingClient.ts';
import { AimPanel, QuestionCard } from './Asking.tsx';
import type { Asked } from './asked.ts';
import { Chooser } from './Chooser.tsx';
import { answeredSets } from './EarlierSets.tsx';
import { Figures } from './Figures.tsx';
import { PacePanel } from './PacePanel.tsx';
import { ReadMap } from './ReadMap.tsx';
import { SlopePanel } from './SlopePanel.tsx';
import { SummaryView } from './SummaryView.tsx';
import { createSession, type Session } from './session.ts';
import { Verdict } from './Verdict.tsx';
import './read.css';

const ask = createReadingClient();
/** What a miss costs on a green takes seconds: on a thread of its own, so that nothing else waits for it. */
const askPutts = createReadingClient();

const makeSet = (offer: FixedOffer, seed: string): Promise<readonly Question[]> => {
  // Greens take a second or so: off the page's thread, and on it only where no worker can be had.
  if (offer.id === PACE_SET.id)
    return ask((engine) => engine.makePaceSet(seed)).catch(() => makePaceSet(seed));
  if (offer.id === SLOPE_SET.id)
    return ask((engine) => engine.makeSlopeSet(seed)).catch(() => makeSlopeSet(seed));
  const drill = offer as ReadDrill;
  return ask((engine) => engine.makeSet(drill, seed)).catch(() => makeReadSet(drill, seed));
};

const session = createSession({
  openStore: async () => {
    const { database, problem } = await ownDatabase();
    return { store: readStoreOf(database), problem };
  },
  now: () => Date.now(),
  newId: () => crypto.randomUUID(),
  newSeed: () => crypto.randomUUID().slice(0, 8),
  player: () => ownSettings.player.peek(),
  makeSet,
  chooseNext: ({ adaptive, others }, seed) =>
    ask((engine) => engine.chooseNext(adaptive, others, seed)).catch(() =>
      chooseNext(adaptive, { earlier: others }, seed),
    ),
  costOf: (putt, pace, player, aim) => ask((engine) => engine.costOf(putt, pace, player, aim)),
  puttsOf: (question, player) => askPutts((engine) => engine.puttsOf(question, player)),
});

/** What is chosen beside the map, by the kind of question. */
const Panel = ({ asked, units, on }: { asked: Asked; units: Units; on: Session }) => {
  if (asked.set.kind === 'paces')
    return <PacePanel asked={asked} units={units} onChoose={on.choose} onLeave={on.leave} />;
  if (asked.set.kind === 'slope')
    return (
      <SlopePanel
        asked={asked}
        guess={on.guess.value}
        onGuess={(guess) => {
          on.guess.value = guess;
        }}
        onCommit={on.estimate}
        onLeave={on.leave}
      />
    );
  return (
    <AimPanel
      asked={asked}
      aim={on.aim.value}
      units={units}
      onAim={(aim) => {
        on.aim.value = aim;
      }}
      onCommit={on.commit}
      onLeave={on.leave}
    />
  );
};

/** Earlier sets on one page: about as high as the drills beside them. */
const EARLIER_AT_ONCE = 8;

const Stages = ({
  settings,
  on,
  wanted,
}: {
  settings: Settings;
  on: Session;
  /** Id of the set a link asks for. */
  wanted: string | undefined;
}) => {
  const units = settings.units.value;
  const stage = on.stage.value;
  // Kept here: who comes back from a set finds the list where it was.
  const earlier = usePage(answeredSets(on.sets.value).length, EARLIER_AT_ONCE);
  if (stage.kind === 'choosing')
    return (
      <Chooser
        sets={on.sets.value}
        ready={on.ready.value}
        unreadable={on.unreadable.value}
        making={on.making.value}
        wanted={wanted}
        feedback={on.feedback.value}
        onFeedback={(feedback) => {
          on.feedback.value = feedback;
        }}
        earlier={earlier}
        onStart={(offer) => void on.start(offer)}
        onResume={on.resume}
        onLook={on.look}
      />
    );
  if (stage.kind === 'summary')
    return (
      <SummaryView set={stage.set} units={units} onLeave={on.leave} onResume={() => on.resume(stage.set)} />
    );
  const revealed = stage.kind === 'revealed' ? stage.revealed : undefined;
  return (
    <div class="read-question">
      {revealed === undefined ? (
        <QuestionCard asked={stage} units={units} />
      ) : (
        <Verdict
          asked={stage}
          revealed={revealed}
          units={units}
          costProblem={on.costProblem.value}
          saved={on.saved.value}
          onNext={on.next}
          onSummary={on.toSummary}
          onLeave={on.leave}
        />
      )}
      <ReadMap
        asked={stage}
        aim={on.aim.value}
        revealed={revealed}
        units={units}
        onAim={(aim) => {
          on.aim.value = aim;
        }}
        onCommit={on.commit}
      />
      {revealed === undefined ? (
        <Panel asked={stage} units={units} on={on} />
      ) : (
        <Figures asked={stage} revealed={revealed} units={units} />
      )}
    </div>
  );
};

export const ReadScreen = ({ settings = ownSettings }: { settings?: Settings }) => {
  useEffect(() => void session.open(), []);
  const { set } = useParams<{ set?: string }>();
  const [, navigate] = useLocation();
  const [wanted, setWanted] = useState<string | undefined>(undefined);
  useEffect(() => {
    if (set === undefined) return;
    setWanted(set);
    // A set in hand is kept as far as it is answered, and is offered again.
    session.leave();
    navigate('/read', { replace: true });
  }, [set, navigate]);
  const problem = session.storageProblem.value ?? session.makingProblem.value;
  return (
    <>
      {problem && (
        <p class="problem read-storage" role="alert">
          {problem}
        </p>
      )}
      <Stages settings={settings} on={session} wanted={wanted} />
    </>
  );
};
