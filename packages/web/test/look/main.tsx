import { startApp } from '../../src/app.tsx';
import { inventedSource } from './invented-source.ts';

const element = document.getElementById('app');
if (element !== null) void startApp(element, { source: inventedSource(), who: null });
