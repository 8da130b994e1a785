/** The frame round every screen: name, navigation, units and theme, the Rules caution. Leaves out: what a screen shows. */
import { useComputed } from '@preact/signals';
import { lazy, Suspense } from 'preact/compat';
import { useEffect } from 'preact/hooks';
import { Link, Route, Router, Switch, useLocation } from 'wouter-preact';
import { useHashLocation } from 'wouter-preact/use-hash-location';
import { DecideScreen } from '../screens/decide/DecideScreen.tsx';
import { Choice } from './Choice.tsx';
import { RulesCaution } from './RulesCaution.tsx';
import { settings, type Theme, theme, units } from './settings.ts';

const ReadScreen = lazy(() =>
  import('../screens/read/index.tsx').then(({ ReadScreen: screen }) => ({ default: screen })),
);

const GreenScreen = lazy(() =>
  import('../screens/green/index.tsx').then(({ GreenScreen: screen }) => ({ default: screen })),
);

const MeasureScreen = lazy(() =>
  import('../screens/measure/index.tsx').then(({ MeasureScreen: screen }) => ({ default: screen })),
);

const PLACES = [
  { path: '/', name: 'Decide', title: 'Borrow: die it in or firm?' },
  { path: '/green', name: 'Whole green', title: 'Borrow: the whole green' },
  { path: '/read', name: 'Read it yourself', title: 'Borrow: read it yourself' },
  { path: '/measure', name: 'Measure', title: 'Borrow: measure' },
] as const;

const THEMES: readonly { value: Theme; label: string }[] = [
  { value: 'auto', label: 'Auto' },
  { value: 'light', label: 'Light' },
  { value: 'dark', label: 'Dark' },
];

const Navigation = () => {
  const [location] = useLocation();
  useEffect(() => {
    document.title = PLACES.find(({ path }) => path === location)?.title ?? 'Borrow';
  }, [location]);
  return (
    <nav class="places" aria-label="Screens">
      {PLACES.map(({ path, name }) => (
        <Link key={path} href={path} aria-current={location === path ? 'page' : undefined}>
          {name}
        </Link>
      ))}
    </nav>
  );
};

const Lost = () => (
  <section class="card">
    <h1>No such page</h1>
    <p>
      <Link href="/">Go to the decision</Link>
    </p>
  </section>
);

export const Shell = () => {
  const unitsNow = useComputed(() => units.value);
  return (
    <Router hook={useHashLocation}>
      <button type="button" class="skip" onClick={skipToMain}>
        Skip to the content
      </button>
      <header class="top">
        <p class="name">Borrow</p>
        <Navigation />
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
      </header>
      <main id="main" tabIndex={-1}>
        <Switch>
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
          <Route path="/measure">
            <Suspense fallback={<p class="quiet">Opening the measuring screen…</p>}>
              <MeasureScreen />
            </Suspense>
          </Route>
          <Route>
            <Lost />
          </Route>
        </Switch>
      </main>
      <Route path="/read">
        <footer class="foot">
          <RulesCaution />
        </footer>
      </Route>
    </Router>
  );
};

/** A link to #main would be taken for a page by the hash router: move the focus ourselves. */
const skipToMain = (): void => document.getElementById('main')?.focus();
