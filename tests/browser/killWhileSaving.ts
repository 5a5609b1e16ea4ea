import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { chromium, type Page } from 'playwright-core';
import { findBrowser, launchOptions } from '../../.tools/browser.mjs';
import { opened } from './openPlayground.ts';

/** What stands on the page of the open case. */
interface CaseOnPage {
  readonly name: string;
  readonly results: readonly string[];
  readonly leaders: readonly string[];
}

/** What stood on the page before its last result and when the browser was killed, and what stood there when it was opened again. */
interface KillTrial {
  readonly earlier: CaseOnPage;
  readonly killed: CaseOnPage;
  readonly again: CaseOnPage;
}

/** Every trial, and the cases listed after the last one: the name and what is said of each. */
export interface KillTrials {
  readonly trials: readonly KillTrial[];
  readonly listed: readonly string[];
}

/** When the browser is killed: as soon as the page calls the result kept, or already when its row stands there. */
export type KillAt = 'kept' | 'row';

/** Records results in a browser that has a profile of its own and kills it at once, without a warning, again and again: a new case with one
 * or two results in every trial, the same profile in all of them. @param address of the page. */
export async function killWhileSaving(address: string, count: number, at: KillAt = 'kept'): Promise<KillTrials> {
  const profile = mkdtempSync(join(tmpdir(), 'killed-'));
  const trials: KillTrial[] = [];
  let running = await start(profile, address);
  try {
    for (let trial = 0; trial < count; trial += 1) {
      const { page } = running;
      const begun = await begin(page, `Trial ${trial}`);
      // what is there before a kill without the word kept was called kept
      const isSecond = at === 'row' || trial % 2 === 1;
      const earlier = isSecond ? await record(page, 1, 'kept') : begun;
      const killed = await record(page, isSecond ? 2 : 1, at);
      await kill(running.browser);
      running = await start(profile, address);
      trials.push({ earlier, killed, again: await standsThere(running.page, 0, 'row') });
    }
    await running.page.getByRole('button', { name: 'Cases' }).click();
    const names = running.page.getByRole('dialog').locator('li .name:has(.about)');
    await names.first().waitFor();
    return { trials, listed: await names.allInnerTexts() };
  } finally {
    await kill(running.browser);
    rmSync(profile, { recursive: true, force: true, maxRetries: 20, retryDelay: 250 });
  }
}

/** A new case with a name and an answer. */
async function begin(page: Page, name: string): Promise<CaseOnPage> {
  await page.getByRole('button', { name: 'Cases' }).click();
  await page.getByRole('button', { name: 'New case' }).click();
  await page.getByLabel('Name of this case').fill(name);
  await page.keyboard.press('Tab');
  await page.getByLabel('When does it misfire?').selectOption({ label: 'Only at idle' });
  return standsThere(page, 0, 'row');
}

async function record(page: Page, results: number, at: KillAt): Promise<CaseOnPage> {
  const isThere = standsThere(page, results, at);
  // the second outcome of the best test: after that another test is best
  const record = page.getByRole('button', { name: /^Record:/ }).nth(1);
  const [there] = await Promise.all([isThere, record.click()]);
  return there;
}

/** Resolves in the very moment in which so many results stand there, with what the page shows then. */
function standsThere(page: Page, results: number, at: KillAt): Promise<CaseOnPage> {
  return page.evaluate(
    ({ results, at }) =>
      new Promise<CaseOnPage>((resolve) => {
        const texts = (rows: string): string[] =>
          [...document.querySelectorAll<HTMLElement>(rows)].map((row) => row.textContent.trim());
        const look = (): void => {
          const now = {
            name: document.title,
            results: texts('#notes ol li'),
            leaders: texts('#now ol li'),
          };
          const isKept = at === 'row' || texts('#notes p').includes('Saved on this device.');
          if (now.results.length < results || !isKept) return;
          watcher.disconnect();
          resolve(now);
        };
        const watcher = new MutationObserver(look);
        watcher.observe(document.body, { subtree: true, childList: true, characterData: true, attributes: true });
        look();
      }),
    { results, at },
  );
}

interface Running {
  readonly browser: ChildProcess;
  readonly page: Page;
}

/** A browser as a process of its own, so that it can be killed like one. */
async function start(profile: string, address: string): Promise<Running> {
  const portFile = join(profile, 'DevToolsActivePort');
  rmSync(portFile, { force: true });
  const own = ['--headless=new', '--remote-debugging-port=0', `--user-data-dir=${profile}`, 'about:blank'];
  const browser = spawn(findBrowser() ?? chromium.executablePath(), [...launchOptions().args, ...own], {
    stdio: 'ignore',
    detached: true,
  });
  try {
    while (!existsSync(portFile) || !readFileSync(portFile, 'utf8').includes('\n')) {
      if (isGone(browser)) throw new TypeError('the browser ended before it could be asked');
      await pause(20);
    }
    const [port] = readFileSync(portFile, 'utf8').split('\n');
    const connected = await chromium.connectOverCDP(`http://127.0.0.1:${port}`, { timeout: 120_000 });
    const [context] = connected.contexts();
    const page = context!.pages()[0] ?? (await context!.newPage());
    page.setDefaultTimeout(120_000);
    await page.goto(address);
    await page.getByRole('heading', { name: 'Most likely now' }).waitFor();
    await opened(page);
    return { browser, page };
  } catch (error) {
    await kill(browser);
    throw error;
  }
}

/** Kills a browser and everything it started, and waits until it is gone. */
async function kill(browser: ChildProcess): Promise<void> {
  if (browser.pid === undefined || isGone(browser)) return;
  const gone = once(browser, 'exit');
  process.kill(-browser.pid, 'SIGKILL');
  await gone;
}

function isGone({ exitCode, signalCode }: ChildProcess): boolean {
  return exitCode !== null || signalCode !== null;
}
