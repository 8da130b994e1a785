/** The only place that builds and connects everything: theme, settings and the shell. */
import { render } from 'preact';
import { Shell } from './app/Shell.tsx';
import { keepForOffline } from './state/offline.ts';
import { ownDatabase } from './state/records.ts';
import { keepSettings } from './state/settings.ts';
import { followTheme } from './state/theme.ts';
import './app/app.css';
import './app/shell.css';
import './controls/pieces.css';

followTheme();
keepSettings();
// At once: it says whether a round is open, in which no screen gives advice. Always resolves.
void ownDatabase();

const host = document.getElementById('app');
if (host === null) throw new Error('index.html has no element with id "app"');
render(<Shell />, host);
keepForOffline();
