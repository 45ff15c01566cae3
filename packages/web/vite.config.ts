import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** Nothing is inlined: the pages run under a policy that allows neither inline scripts nor data addresses. */
export default defineConfig({
  plugins: [react()],
  worker: { format: 'es' },
  build: {
    outDir: 'dist',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    target: 'es2022',
    sourcemap: false,
  },
});
