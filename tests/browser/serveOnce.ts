import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { preview } from 'vite';
import type { TestProject } from 'vitest/node';
import { launchOptions } from '../../.tools/browser.mjs';

/** Where the files of this folder find the built page and the browser they share. */
export interface Served {
  readonly address: string;
  /** To be connected to, not launched. */
  readonly browser: string;
}

declare module 'vitest' {
  interface ProvidedContext {
    served: Served;
  }
}

/** Serves playground/dist, as a visitor gets it, and starts one browser: once for all files. Ends both afterwards. */
export default async function serveOnce(project: TestProject): Promise<() => Promise<void>> {
  const root = fileURLToPath(new URL('../../playground', import.meta.url));
  if (!existsSync(`${root}/dist/index.html`))
    throw new TypeError('playground/dist is missing: run "npm run build" first');
  const server = await preview({ root, logLevel: 'warn', preview: { port: 0, host: '127.0.0.1' } });
  const browser = await chromium.launchServer(launchOptions());
  project.provide('served', { address: server.resolvedUrls?.local[0] ?? '', browser: browser.wsEndpoint() });
  return async () => {
    await browser.close();
    await server.close();
  };
}
