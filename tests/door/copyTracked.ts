import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, realpathSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { root } from '../fixtures/filesUnder.ts';

/** A copy of the repository as a clone would have it: every file git knows or would take, as it is now; nothing installed, nothing built.
 * @returns its folder; undefined where there is no git, or this is no checkout */
export function copyTracked(): string | undefined {
  let listed: string;
  try {
    listed = execFileSync('git', ['ls-files', '-z', '--cached', '--others', '--exclude-standard'], {
      cwd: root,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    });
  } catch {
    return undefined;
  }
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'fresh-')));
  for (const file of listed.split('\0'))
    if (file !== '' && existsSync(join(root, file))) cpSync(join(root, file), join(folder, file));
  return folder;
}
