import { chromium } from 'playwright-core';
import { build } from 'vite';
import { launchOptions } from '../../.tools/browser.mjs';

/** Calls an exported function of a module in a page of its own. @param {string} entry path of the module @param {string} name of the function
 * @param {unknown[]} args @returns {Promise<any>} */
export async function inChromium(entry, name, args) {
  const built = await build({
    configFile: false,
    logLevel: 'error',
    define: { 'process.env.NODE_ENV': '"production"' },
    build: { write: false, lib: { entry, formats: ['iife'], name: 'bench' } },
  });
  const [{ output }] = [built].flat();
  const browser = await chromium.launch(launchOptions());
  try {
    const page = await browser.newPage();
    await page.addScriptTag({ content: output[0].code });
    return await page.evaluate(([name, args]) => Reflect.get(globalThis, 'bench')[name](...args), [name, args]);
  } finally {
    await browser.close();
  }
}
