/** The only place that builds and connects everything: theme, settings and the shell. */
import { render } from 'preact';
import { keepForOffline } from './app/offline.ts';
import { ownDatabase } from './app/records.ts';
import { Shell } from './app/Shell.tsx';
import { keepSettings } from './app/settings.ts';
import { followTheme } from './app/theme.ts';
import './app/app.css';
import './app/shell.css';
import './app/pieces.css';

followTheme();
keepSettings();
// At once: it says whether a round is open, in which no screen gives advice. Always resolves.
void ownDatabase();

const host = document.getElementById('app');
if (host === null) throw new Error('index.html has no element with id "app"');
render(<Shell />, host);
keepForOffline();
