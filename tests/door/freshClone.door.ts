import { spawn, type ChildProcess } from 'node:child_process';
import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { leaders, servePlayground, type Playground } from '../browser/openPlayground.ts';
import { copyTracked } from './copyTracked.ts';

// What a new user does first: the README's command in a clone where nothing is installed and nothing is built.
const folder = copyTracked();
let playground: Playground;
beforeAll(async () => {
  playground = await servePlayground();
});
afterAll(async () => {
  await playground.close();
  if (folder !== undefined) rmSync(folder, { recursive: true });
});

/** What the command says, line by line, until it says where the page is. */
function addressOf(command: ChildProcess): Promise<string> {
  let said = '';
  return new Promise((resolve, reject) => {
    const hear = (part: Buffer): void => {
      said += part.toString();
      const [, address] = /^The playground is at (\S+)/m.exec(said) ?? [];
      if (address !== undefined) resolve(address);
    };
    command.stdout!.on('data', hear);
    command.stderr!.on('data', hear);
    command.on('close', (code) => reject(new Error(`npm start ended with ${code}:\n${said}`)));
  });
}

test.skipIf(folder === undefined)(
  'npm start in a fresh clone prints its address, the page answers with a ranking, and everything is ended again (skipped where this is no git checkout)',
  async () => {
    expect(existsSync(join(folder!, 'node_modules'))).toBe(false);
    expect(existsSync(join(folder!, 'packages/core/dist'))).toBe(false);
    const command = spawn('npm', ['start'], {
      cwd: folder,
      detached: process.platform !== 'win32', // a group of its own, ended as a terminal ends it
      shell: process.platform === 'win32',
      env: { ...process.env, PORT: '0', HOST: '127.0.0.1', BROWSER: 'none', npm_config_prefer_offline: 'true' },
    });
    const ended = new Promise<void>((resolve) => command.on('close', () => resolve()));
    let address = '';
    try {
      address = await addressOf(command);
      const { page, complaints, strangers } = await playground.open({ address, worksBeside: true });
      expect(await leaders(page)).toHaveLength(3);
      expect([...complaints, ...strangers]).toEqual([]);
    } finally {
      if (process.platform === 'win32') command.kill();
      else process.kill(-command.pid!, 'SIGINT');
      await ended;
    }
    await expect(fetch(address)).rejects.toThrow();
  },
);
