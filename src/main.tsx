/** The only place that builds and connects everything: theme, settings and the shell. */
import { render } from 'preact';
import { Shell } from './app/Shell.tsx';
import { keepSettings } from './app/settings.ts';
import { followTheme } from './app/theme.ts';
import './app/app.css';

followTheme();
keepSettings();

const host = document.getElementById('app');
if (host === null) throw new Error('index.html has no element with id "app"');
render(<Shell />, host);
