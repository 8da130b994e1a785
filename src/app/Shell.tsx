/**
 * The frame round every screen: name, navigation, units and theme, the Rules caution; and the Rules mode in the place of every
 * screen with advice while a round is open. Leaves out: what a screen shows.
 */
import { useComputed } from '@preact/signals';
import { Suspense } from 'preact/compat';
import { useEffect, useState } from 'preact/hooks';
import { Link, Route, Router, Switch, useLocation } from 'wouter-preact';
import { useHashLocation } from 'wouter-preact/use-hash-location';
import { Choice } from '../controls/Choice.tsx';
import { RulesCaution } from '../controls/RulesCaution.tsx';
import { adviceAllowed, openRound } from '../state/records.ts';
import { type Theme, theme, units } from '../state/settings.ts';
import { onPhone } from '../state/theme.ts';
import { isAt, PLACES, type Place } from './places.tsx';
import { RulesMode } from './RulesMode.tsx';
import { OfflineReady, UpdatePrompt } from './UpdatePrompt.tsx';

const THEMES: readonly { value: Theme; label: string }[] = [
  { value: 'auto', label: 'Auto' },
  { value: 'light', label: 'Light' },
  { value: 'dark', label: 'Dark' },
];

/** Eleven ways on a line; on a telephone they are folded behind the name of the screen one is on. */
const Navigation = () => {
  const [location] = useLocation();
  const [unfolded, setUnfolded] = useState(false);
  const allowed = adviceAllowed.value;
  const folded = onPhone.value;
  const here = PLACES.find((place) => isAt(place, location));
  useEffect(() => {
    document.title = (allowed || here?.inRound ? here?.title : 'Borrow: a round is open') ?? 'Borrow';
    setUnfolded(false);
  }, [location, allowed]);
  return (
    <nav class={folded ? 'places folded' : 'places'} aria-label="Screens">
      {folded && (
        <button type="button" class="fold" aria-expanded={unfolded} onClick={() => setUnfolded(!unfolded)}>
          {here?.name ?? 'Go to'}
        </button>
      )}
      {(unfolded || !folded) &&
        PLACES.map((place) => (
          <Link key={place.path} href={place.path} aria-current={isAt(place, location) ? 'page' : undefined}>
            {place.name}
          </Link>
        ))}
      {!allowed && (
        <Link href="/record" class="rules-flag">
          Rules mode: a round is open
        </Link>
      )}
    </nav>
  );
};

const Preferences = () => {
  const unitsNow = useComputed(() => units.value);
  return (
    <div class="preferences">
      <Choice
        legend="Units"
        name="units"
        value={unitsNow.value}
        options={[
          { value: 'imperial', label: 'ft, in' },
          { value: 'metric', label: 'm, cm' },
        ]}
        onChange={(value) => {
          units.value = value;
        }}
      />
      <Choice
        legend="Theme"
        name="theme"
        value={theme.value}
        options={THEMES}
        onChange={(value) => {
          theme.value = value;
        }}
      />
    </div>
  );
};

/** A round on a telephone leaves its screen to the putts: the way to elsewhere comes after them. */
const useSlim = (): boolean => {
  const [location] = useLocation();
  return location === '/record' && onPhone.value && typeof openRound.value === 'object';
};

const Lost = () => (
  <section class="card">
    <h1>No such page</h1>
    <p>
      <Link href="/">Go to the decision</Link>
    </p>
  </section>
);

const Opened = ({ place: { name, Screen, caution } }: { place: Place }) => (
  <>
    <Suspense fallback={<p class="quiet">Opening “{name}”…</p>}>
      <Screen />
    </Suspense>
    {caution && (
      <footer class="foot">
        <RulesCaution />
      </footer>
    )}
  </>
);

const Screens = () => {
  const slim = useSlim();
  const allowed = adviceAllowed.value;
  return (
    <>
      <header class={slim ? 'top slim' : 'top'}>
        <p class="name">Borrow</p>
        {slim ? (
          <p class="rules-flag">Rules mode: no advice, no analysis</p>
        ) : (
          <>
            <Navigation />
            <Preferences />
          </>
        )}
      </header>
      <main id="main" tabIndex={-1}>
        <UpdatePrompt />
        <Switch>
          {PLACES.filter(({ inRound }) => allowed || inRound).map((place) => (
            <Route key={place.path} path={`${place.path}${place.behind ?? ''}`}>
              <Opened place={place} />
            </Route>
          ))}
          <Route>{allowed ? <Lost /> : <RulesMode />}</Route>
        </Switch>
      </main>
      {slim && (
        <div class="top below">
          <Navigation />
          <Preferences />
        </div>
      )}
      <OfflineReady />
    </>
  );
};

export const Shell = () => (
  <Router hook={useHashLocation}>
    <button type="button" class="skip" onClick={skipToMain}>
      Skip to the content
    </button>
    <Screens />
  </Router>
);

/** A link to #main would be taken for a page by the hash router: move the focus ourselves. */
const skipToMain = (): void => document.getElementById('main')?.focus();
