/** What only the real Electron can show. Without its program file, or without a display, it says so and is not run. */
import { defineConfig } from '@playwright/test';

export default defineConfig({
  testDir: '.',
  testMatch: 'real.test.ts',
  outputDir: '../../test-results/electron',
  workers: 1,
  timeout: 60_000,
  forbidOnly: true,
  reporter: [['list']],
});
