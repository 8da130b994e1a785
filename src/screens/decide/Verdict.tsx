/** The sentence that answers the question, and its margin. */
import { effect, signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { Link } from 'wouter-preact';
import { presetOf } from '../../../sim/index.ts';
import { knownPlayer, units } from '../../state/settings.ts';
import { diePace, firmPace, problem, putt } from '../../state/situation.ts';
import { familyDetail, familyHeadline, middleOnlyWords, TEST_WORDS } from '../../text/family.ts';
import {
  verdictDetail,
  verdictHeadline,
  verdictMargin,
  verdictMissing,
  verdictQuestion,
} from '../../text/verdict.ts';
import { answer, behind, cancelWork, paces, tableBehind, tableProgress } from './answer.ts';
import { FamilyTable } from './FamilyTable.tsx';
import { family, familyBehind, familyProgress } from './family.ts';
import { lines } from './lines.ts';
import { margin, marginBehind, marginProgress } from './margin.ts';
import { failure, stopped } from './work.ts';

const reasonOf = (pace: 'die' | 'firm'): string | undefined => {
  const read = lines.value?.[pace];
  return read?.status === 'noLine' ? read.reason : undefined;
};

const headline = (): string | undefined => {
  const reasons = [reasonOf('die'), reasonOf('firm')] as const;
  if (reasons[0] !== undefined || reasons[1] !== undefined) return verdictMissing(...reasons);
  const now = answer.value;
  if (!(now?.counted && now.dieOdds && now.firmOdds)) return undefined;
  // The middle player's answer stands first; once a second has been asked, it is that of all asked.
  const all = familyBehind.value ? undefined : family.value?.found;
  const forAll = all && all.asked > 1 ? familyHeadline(all) : undefined;
  return forAll ?? verdictHeadline(now.dieOdds, now.firmOdds);
};

const Working = () => {
  if (problem.value !== undefined) return null;
  if (stopped.value) return <span>Stopped. Any change to the putt starts the work again.</span>;
  const busy = tableBehind.value || behind.value;
  const others = familyProgress.value;
  if (!busy && marginProgress.value === undefined && others === undefined) return null;
  const [words, share] = busy
    ? ['Working out the next putts…', tableProgress.value]
    : others
      ? [`Asking who else you may be: ${others.asked} of ${others.of}…`, others.share]
      : ['Trying other green speeds and slopes…', marginProgress.value];
  return (
    <>
      <span>{words}</span>
      {/* No bar without a share: one that only moves would keep the page painting while the engine needs the machine. */}
      {share !== undefined && <progress aria-label={words} max={1} value={share} />}
      <button type="button" class="plain" onClick={cancelWork}>
        Stop
      </button>
    </>
  );
};

const Margin = () => {
  const now = answer.value;
  const cases = margin.value?.cases;
  if (!now?.dieOdds || !now.firmOdds || cases === undefined) return null;
  const land = now.putt.surface;
  return (
    <p class={marginBehind.value ? 'margin stale' : 'margin'} data-testid="margin">
      {verdictMargin({
        difference: now.firmOdds.expectedPutts - now.dieOdds.expectedPutts,
        cases,
        greenSpeed: now.putt.greenSpeed,
        slope: land.kind === 'plane' ? land.slope : undefined,
      })}
    </p>
  );
};

/** On a green the others take a while: until then, or without them, the answer is one player's. */
const isMiddleOnly = (): boolean => {
  const asked = familyBehind.value ? 0 : (family.value?.found.asked ?? 0);
  return putt.value.surface.kind === 'field' && knownPlayer.value.members.length > 1 && asked < 2;
};

const MiddleOnly = () => (
  <p class="hint" data-testid="middle-only">
    {middleOnlyWords(knownPlayer.value.members.length, stopped.value)}
  </p>
);

/** Who "these" are, what would tell which of them, and each of them. */
const Family = () => {
  const now = family.value;
  if (now === undefined) return null;
  const { found, known } = now;
  const { origin } = known;
  const preset = origin.kind === 'preset' ? presetOf(origin.id)?.name : undefined;
  const test = found.verdict.kind === 'turns' ? TEST_WORDS[found.verdict.on.test] : undefined;
  return (
    <div class={familyBehind.value ? 'stale' : undefined}>
      {test && (
        <p data-testid="family-test">
          <Link href={test.link}>{test.linkWords}</Link>
        </p>
      )}
      <p class="hint" data-testid="family-detail">
        {familyDetail(found, origin, preset)}
      </p>
      <FamilyTable />
    </div>
  );
};

/** What is read out: the sentence once it has come to rest, not every step of a drag. */
const spoken = signal('');
const SPEAK_PAUSE = 700;
const followSpoken = (): (() => void) => {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const stop = effect(() => {
    const words = problem.value === undefined ? headline() : undefined;
    const settled = !behind.value && !tableBehind.value && familyProgress.value === undefined;
    clearTimeout(timer);
    if (words !== undefined && settled)
      timer = setTimeout(() => {
        spoken.value = words;
      }, SPEAK_PAUSE);
  });
  return () => {
    stop();
    clearTimeout(timer);
  };
};

export const Verdict = () => {
  useEffect(followSpoken, []);
  const now = answer.value;
  const stale = behind.value || tableBehind.value || problem.value !== undefined;
  const reasons = [reasonOf('die'), reasonOf('firm')];
  const odds =
    now?.counted && now.dieOdds && now.firmOdds && !reasons.some(Boolean)
      ? { die: now.dieOdds, firm: now.firmOdds, best: paces.value?.best }
      : undefined;
  return (
    <section class="card verdict" aria-label="The answer">
      <p class="question">{verdictQuestion(diePace.value, firmPace.value, units.value)}</p>
      <h1 data-testid="verdict" class={stale ? 'stale' : undefined}>
        {headline() ?? 'Working it out…'}
      </h1>
      <p class="unseen" role="status">
        {spoken.value}
      </p>
      {problem.value !== undefined && (
        <p class="problem" role="alert" data-testid="problem">
          {problem.value} The last good answer is kept.
        </p>
      )}
      {failure.value !== undefined && (
        <p class="problem" role="alert">
          {failure.value}
        </p>
      )}
      {reasons
        .filter((reason): reason is string => reason !== undefined)
        .map((reason) => (
          <p key={reason}>{reason}</p>
        ))}
      {odds && (
        <p class={stale ? 'detail stale' : 'detail'}>
          {verdictDetail(odds.die, odds.firm, units.value, odds.best)}
        </p>
      )}
      {odds && (isMiddleOnly() ? <MiddleOnly /> : <Family />)}
      {odds && <Margin />}
      <div class="working quiet">
        <Working />
      </div>
    </section>
  );
};
