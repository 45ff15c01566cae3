import { startApp } from './app.tsx';
import { workerSource } from './worker/worker-source.ts';

const element = document.getElementById('app');
if (element === null) throw new Error('index.html has no element "app" to draw in.');
const worker = new Worker(new URL('./worker/farm-worker.ts', import.meta.url), { type: 'module', name: 'farm' });
startApp(element, workerSource(worker));
