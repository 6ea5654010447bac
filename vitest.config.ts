import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  // `electron` on the module path would try to download its binary: tests get a stand-in with its behaviour.
  resolve: { alias: { electron: at('./tests/stand-in/electron.ts') } },
  test: {
    include: ['src/**/*.test.ts', 'src/**/*.test.tsx', 'tests/**/*.test.ts'],
    exclude: ['tests/e2e/**', 'tests/electron/**', 'node_modules/**', 'out/**'],
    environment: 'node',
    env: { TZ: 'UTC', LC_ALL: 'en_GB.UTF-8' },
    testTimeout: 20_000,
  },
});
