/**
 * The frame round every screen: name, navigation, units and theme, the Rules caution; and the Rules mode in the place of every
 * screen with advice while a round is open. Leaves out: what a screen shows.
 */
import { useComputed } from '@preact/signals';
import { lazy, Suspense } from 'preact/compat';
import { useEffect } from 'preact/hooks';
import { Link, Route, Router, Switch, useLocation } from 'wouter-preact';
import { useHashLocation } from 'wouter-preact/use-hash-location';
import { DecideScreen } from '../screens/decide/DecideScreen.tsx';
import { Choice } from './Choice.tsx';
import { RulesCaution } from './RulesCaution.tsx';
import { RulesMode } from './RulesMode.tsx';
import { adviceAllowed, openRound } from './records.ts';
import { settings, type Theme, theme, units } from './settings.ts';
import { onPhone } from './theme.ts';
import { OfflineReady, UpdatePrompt } from './UpdatePrompt.tsx';

const ReadScreen = lazy(() =>
  import('../screens/read/index.tsx').then(({ ReadScreen: screen }) => ({ default: screen })),
);

const GreenScreen = lazy(() =>
  import('../screens/green/index.tsx').then(({ GreenScreen: screen }) => ({ default: screen })),
);

const RecordScreen = lazy(() =>
  import('../screens/record/index.tsx').then(({ RecordScreen: screen }) => ({ default: screen })),
);

/** `inRound`: shows neither advice nor analysis, and stays open while a round is. */
const PLACES: readonly { path: string; name: string; title: string; inRound?: true }[] = [
  { path: '/', name: 'Decide', title: 'Borrow: die it in or firm?' },
  { path: '/green', name: 'Whole green', title: 'Borrow: the whole green' },
  { path: '/read', name: 'Read it yourself', title: 'Borrow: read it yourself' },
  { path: '/record', name: 'Record', title: 'Borrow: record putts', inRound: true },
];

const THEMES: readonly { value: Theme; label: string }[] = [
  { value: 'auto', label: 'Auto' },
  { value: 'light', label: 'Light' },
  { value: 'dark', label: 'Dark' },
];

const Navigation = () => {
  const [location] = useLocation();
  const allowed = adviceAllowed.value;
  useEffect(() => {
    const place = PLACES.find(({ path }) => path === location);
    document.title = (allowed || place?.inRound ? place?.title : 'Borrow: a round is open') ?? 'Borrow';
  }, [location, allowed]);
  return (
    <nav class="places" aria-label="Screens">
      {PLACES.map(({ path, name }) => (
        <Link key={path} href={path} aria-current={location === path ? 'page' : undefined}>
          {name}
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
          <Route path="/record">
            <Suspense fallback={<p class="quiet">Opening the record…</p>}>
              <RecordScreen />
            </Suspense>
          </Route>
          {!allowed && (
            <Route>
              <RulesMode />
            </Route>
          )}
          <Route path="/">
            <DecideScreen />
          </Route>
          <Route path="/green">
            <Suspense fallback={<p class="quiet">Opening the whole green…</p>}>
              <GreenScreen />
            </Suspense>
          </Route>
          <Route path="/read">
            <Suspense fallback={<p class="quiet">Opening the reading green…</p>}>
              <ReadScreen settings={settings} />
            </Suspense>
          </Route>
          <Route>
            <Lost />
          </Route>
        </Switch>
      </main>
      {slim && (
        <div class="top below">
          <Navigation />
          <Preferences />
        </div>
      )}
      {allowed && (
        <Route path="/read">
          <footer class="foot">
            <RulesCaution />
          </footer>
        </Route>
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
