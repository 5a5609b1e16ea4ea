import { svelte } from '@sveltejs/vite-plugin-svelte';
import { playwright } from '@vitest/browser-playwright';
import { defineConfig } from 'vitest/config';
import { launchOptions } from './.tools/browser.mjs';

const sourceConditions = { resolve: { conditions: ['source', 'node', 'import', 'default'] } };

export default defineConfig({
  test: {
    maxWorkers: 2,
    reporters: ['default', './.tools/tallyReporter.mjs'],
    coverage: {
      provider: 'v8',
      include: ['packages/*/src/**/*.ts'],
      exclude: ['**/*.d.ts', '**/*.test.ts', '**/index.ts'],
      reporter: ['text', 'json-summary'],
      thresholds: { lines: 90, branches: 75 },
    },
    projects: [
      {
        ssr: sourceConditions,
        test: { name: 'node', include: ['packages/*/src/**/*.test.ts', 'tests/**/*.test.ts'], testTimeout: 30_000 },
      },
      {
        plugins: [svelte({ configFile: './playground/svelte.config.js' })],
        resolve: { conditions: ['source', 'browser', 'module', 'development|production'] },
        optimizeDeps: { include: ['svelte', 'jstat', 'zod', 'zod/mini', 'immer'] },
        test: {
          name: 'components',
          include: ['playground/src/**/*.browser.test.ts'],
          browser: {
            enabled: true,
            headless: true,
            screenshotFailures: false,
            instances: [{ browser: 'chromium' }],
            provider: playwright({ launchOptions: launchOptions() }),
          },
        },
      },
      {
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.browser.ts'],
          testTimeout: 180_000,
          hookTimeout: 120_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
