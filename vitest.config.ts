import { svelte } from '@sveltejs/vite-plugin-svelte';
import { playwright } from '@vitest/browser-playwright';
import { defineConfig } from 'vitest/config';
import { launchOptions } from './.tools/browser.mjs';

/** What is not there yet on a busy machine comes; only a test that hangs ends here. */
const PATIENCE = { testTimeout: 900_000, hookTimeout: 120_000, expect: { poll: { timeout: 120_000 } } };
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
        test: {
          name: 'node',
          include: ['packages/*/src/**/*.test.ts', 'tests/**/*.test.ts'],
          isolate: false,
          ...PATIENCE,
        },
      },
      {
        plugins: [svelte({ configFile: './playground/svelte.config.js' })],
        resolve: { conditions: ['source', 'browser', 'module', 'development|production'] },
        optimizeDeps: { include: ['svelte', 'jstat', 'zod', 'zod/mini', 'immer'] },
        test: {
          name: 'components',
          include: ['playground/src/**/*.browser.test.ts'],
          ...PATIENCE,
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
          globalSetup: ['tests/browser/serveOnce.ts'],
          ...PATIENCE,
        },
      },
      {
        // the gate's: `npm test -- --door`
        test: {
          name: 'door',
          include: ['tests/door/**/*.door.ts'],
          globalSetup: ['tests/browser/serveOnce.ts'],
          ...PATIENCE,
        },
      },
      {
        // not part of `npm test`: `npm run test:long`
        ssr: sourceConditions,
        test: {
          name: 'long',
          include: ['tests/**/*.long.ts'],
          globalSetup: ['tests/browser/serveOnce.ts'],
          ...PATIENCE,
          testTimeout: 3_600_000,
        },
      },
    ],
  },
});
