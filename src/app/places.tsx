/**
 * Every screen: where it is, what it is called, when it may be seen. Each is loaded when first opened, but for the one a visitor
 * meets first. Leaves out: the frame round them (Shell.tsx).
 */
import type { ComponentType } from 'preact';
import { lazy } from 'preact/compat';
import { DecideScreen } from '../screens/decide/DecideScreen.tsx';
import { settings } from '../state/settings.ts';

export interface Place {
  readonly path: string;
  /** What may stand behind the path: a thing to open the screen with. */
  readonly behind?: string;
  /** In the navigation. */
  readonly name: string;
  /** Of the window. */
  readonly title: string;
  readonly Screen: ComponentType;
  /** Gives neither advice nor analysis, and stays open while a round is. */
  readonly inRound?: true;
  /** Ends with the Rules caution. */
  readonly caution?: true;
}

const GreenScreen = lazy(() =>
  import('../screens/green/index.tsx').then(({ GreenScreen: screen }) => ({ default: screen })),
);
const ReadScreen = lazy(() =>
  import('../screens/read/index.tsx').then(({ ReadScreen: Screen }) => ({
    default: () => <Screen settings={settings} />,
  })),
);
const RecordScreen = lazy(() =>
  import('../screens/record/index.tsx').then(({ RecordScreen: screen }) => ({ default: screen })),
);
const ReviewScreen = lazy(() =>
  import('../screens/review/index.tsx').then(({ ReviewScreen: screen }) => ({ default: screen })),
);
const ErrorsScreen = lazy(() =>
  import('../screens/errors/index.tsx').then(({ ErrorsScreen: screen }) => ({ default: screen })),
);
const MeasureScreen = lazy(() =>
  import('../screens/measure/index.tsx').then(({ MeasureScreen: screen }) => ({ default: screen })),
);
const CostsScreen = lazy(() =>
  import('../screens/costs/index.tsx').then(({ CostsScreen: screen }) => ({ default: screen })),
);
const PracticeScreen = lazy(() =>
  import('../screens/practice/index.tsx').then(({ PracticeScreen: screen }) => ({ default: screen })),
);
const WeekScreen = lazy(() =>
  import('../screens/week/index.tsx').then(({ WeekScreen: screen }) => ({ default: screen })),
);
const DataScreen = lazy(() =>
  import('../screens/data/index.tsx').then(({ DataScreen: screen }) => ({ default: screen })),
);

/** Whether a location is on this screen, with or without a thing behind its path. */
export const isAt = ({ path, behind }: Place, location: string): boolean =>
  location === path || (behind !== undefined && location.startsWith(`${path}/`));

export const PLACES: readonly Place[] = [
  { path: '/', name: 'Decide', title: 'Borrow: die it in or firm?', Screen: DecideScreen },
  { path: '/green', name: 'Whole green', title: 'Borrow: the whole green', Screen: GreenScreen },
  {
    path: '/read',
    behind: '/:set?',
    name: 'Read it yourself',
    title: 'Borrow: read it yourself',
    Screen: ReadScreen,
    caution: true,
  },
  { path: '/record', name: 'Record', title: 'Borrow: record putts', Screen: RecordScreen, inRound: true },
  { path: '/review', name: 'Review', title: 'Borrow: your putting, reviewed', Screen: ReviewScreen },
  {
    path: '/errors',
    name: 'Your errors',
    title: 'Borrow: your errors, from your record',
    Screen: ErrorsScreen,
  },
  { path: '/costs', name: 'What it costs', title: 'Borrow: what your errors cost', Screen: CostsScreen },
  {
    path: '/practice',
    behind: '/:drill?/:on?',
    name: 'Practise',
    title: 'Borrow: putting drills',
    Screen: PracticeScreen,
  },
  { path: '/week', name: 'The week', title: 'Borrow: the week', Screen: WeekScreen },
  {
    path: '/measure',
    behind: '/:form?',
    name: 'Measure',
    title: 'Borrow: measure',
    Screen: MeasureScreen,
  },
  { path: '/data', name: 'Your data', title: 'Borrow: your data', Screen: DataScreen, inRound: true },
];
