import { keepOnThisMachine } from './keep-on-this-machine.ts';
import { whoIsHere } from './people/ask.ts';
import { workerSource } from './worker/worker-source.ts';

const element = document.getElementById('app');
if (element === null) throw new Error('index.html has no element "app" to draw in.');
// Read while we ask: most who come are in already.
const app = import('./app.tsx');
const who = await whoIsHere();
const isOutside = who?.signIn === 'asked' && (who.visitor === null || who.visitor.secondFactor === 'to-set-up');
if (isOutside || window.location.pathname === '/invitation') (await import('./people/door.tsx')).openDoor(element, who);
else {
  const worker = new Worker(new URL('./worker/farm-worker.ts', import.meta.url), { type: 'module', name: 'farm' });
  (await app).startApp(element, { source: workerSource(worker), who });
}
keepOnThisMachine();
