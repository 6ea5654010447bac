/**
 * Three builds: the main process, the preload script, the window. The window is the same for Electron and for a
 * browser, so it is told nothing about either.
 */
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'electron-vite';

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

// What the Electron of package.json has inside; stated, because the build tool's own table may lag behind.
const node = 'node24';
// A browser that shows the window in Electron's stead may be somewhat older than that.
const chromium = 'chrome140';

export default defineConfig({
  main: {
    build: {
      target: node,
      outDir: 'out/main',
      externalizeDeps: false, // one file starts faster than a tree of packages, and needs none of them installed
      rolldownOptions: {
        input: { index: at('src/main/index.ts') },
        // Beside index.js, so that the templates are two folders up from every file, as they are in the sources.
        output: { chunkFileNames: '[name]-[hash].js' },
      },
    },
  },
  preload: {
    build: {
      target: node,
      outDir: 'out/preload',
      externalizeDeps: false, // a sandboxed preload is one plain script and can load nothing
      rolldownOptions: {
        input: { preload: at('src/preload/preload.ts') },
        output: { format: 'cjs', entryFileNames: 'preload.cjs', codeSplitting: false },
      },
    },
  },
  renderer: {
    root: at('src/renderer'),
    base: './',
    plugins: [react()],
    worker: { format: 'es' },
    build: {
      target: chromium,
      outDir: at('out/renderer'),
      emptyOutDir: true,
      minify: true,
      modulePreload: { polyfill: false },
      chunkSizeWarningLimit: 2000, // kB; read from the disk beside it, not over a network
      assetsInlineLimit: 0, // the content policy allows our own files, not fonts or scripts in data addresses
      rolldownOptions: { input: at('src/renderer/index.html') },
    },
  },
});
