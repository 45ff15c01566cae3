import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, resolve, sep } from 'node:path';
import react from '@vitejs/plugin-react';
import { build } from 'esbuild';
import { defineConfig, type Plugin } from 'vite';

/** Nothing is inlined: the pages run under a policy that allows neither inline scripts nor data addresses. */
export default defineConfig({
  plugins: [react(), serviceWorker()],
  worker: { format: 'es' },
  build: {
    outDir: 'dist',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    target: 'es2022',
    sourcemap: false,
  },
});

/** Builds the service worker last, with the list of all files it is to keep and a mark that changes with any of them. */
function serviceWorker(): Plugin {
  return {
    name: 'service-worker',
    apply: 'build',
    enforce: 'post',
    async writeBundle({ dir }) {
      const outFolder = resolve(dir ?? 'dist');
      const files = filesIn(outFolder).filter((path) => path !== '/service-worker.js');
      const mark = createHash('sha256');
      for (const path of files) mark.update(path).update(readFileSync(join(outFolder, path)));
      await build({
        entryPoints: [join(import.meta.dirname, 'src', 'service-worker.ts')],
        outfile: join(outFolder, 'service-worker.js'),
        bundle: true,
        format: 'iife',
        target: 'es2022',
        minify: true,
        logLevel: 'error',
        define: { __APP_FILES__: JSON.stringify(files), __APP_MARK__: JSON.stringify(mark.digest('hex').slice(0, 16)) },
      });
    },
  };
}

function filesIn(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => statSync(join(folder, path)).isFile())
    .map((path) => `/${path.split(sep).join('/')}`)
    .sort();
}
