import { startApp } from './app.tsx';
import { emptySource } from './worker/empty-source.ts';

const element = document.getElementById('app');
if (element === null) throw new Error('index.html has no element "app" to draw in.');
startApp(element, emptySource);
