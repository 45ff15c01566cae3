import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** Serves the pages over an invented farm, to look at: `npx vite --config packages/web/test/look/vite.config.ts packages/web/test/look`. */
export default defineConfig({
  root: import.meta.dirname,
  plugins: [react()],
  appType: 'spa',
  server: { port: 7310, strictPort: true, fs: { strict: false } },
});
