// npm test: builds, then format, lint and types beside the tests; closes with one plain line. Plain Node.
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const long = process.argv.includes('--long');
// the long run tries every law on three times its cases (seed: FAULTODDS_SEED)
if (long) process.env.FAULTODDS_RUNS ??= '3';
const projects = long ? ['long', 'node'] : ['node', 'components', 'browser'];
if (process.argv.includes('--door')) projects.push('door');
const folder = mkdtempSync(join(tmpdir(), 'faultodds-tally-'));
const tally = join(folder, 'tally.json');

/** Runs a command. @param {string[]} command without the program, which is node @param {boolean} quiet prints only when asked to
 * @returns {Promise<{ code: number, seconds: number, print: () => void }>} */
function run(command, quiet = false) {
  const started = performance.now();
  const child = spawn(process.execPath, command, {
    cwd: root,
    stdio: quiet ? ['ignore', 'pipe', 'pipe'] : 'inherit',
    env: { ...process.env, FAULTODDS_TALLY: tally },
  });
  /** @type {Buffer[]} */
  const said = [];
  child.stdout?.on('data', (part) => said.push(part));
  child.stderr?.on('data', (part) => said.push(part));
  return new Promise((resolve) =>
    child.on('close', (code) =>
      resolve({
        code: code ?? 1,
        seconds: Math.round((performance.now() - started) / 1000),
        print: () => process.stdout.write(Buffer.concat(said)),
      }),
    ),
  );
}
const npm = process.env.npm_execpath ?? '';
if (!npm.endsWith('.js')) {
  console.error('Run this as "npm test".');
  process.exit(1);
}

const built = await run([npm, 'run', '--silent', 'build']);
if (built.code !== 0) process.exit(built.code);
const [checked, tested] = await Promise.all([
  long ? { code: 0, seconds: 0, print() {} } : run([npm, 'run', '--silent', 'check'], true),
  run([
    'node_modules/vitest/vitest.mjs',
    'run',
    ...projects.flatMap((name) => ['--project', name]),
    ...(long ? ['.long.', 'tests/laws'] : []),
  ]),
]);
checked.print();
let counts = { passed: 0, failed: 1, skipped: 0 };
try {
  counts = JSON.parse(readFileSync(tally, 'utf8'));
} catch {
  console.error('The test runner ended without a result.');
}
rmSync(folder, { recursive: true });
// format, lint and types are one test more
if (!long) counts[checked.code === 0 ? 'passed' : 'failed'] += 1;
if (tested.code !== 0 && counts.failed === 0) counts.failed = 1;
console.log(
  `\nbuild ${built.seconds} s, check ${checked.seconds} s (${checked.code === 0 ? 'passed' : 'FAILED'}) beside tests ${tested.seconds} s`,
);
console.log(`\n${counts.passed} passed, ${counts.failed} failed, ${counts.skipped} skipped`);
process.exit(counts.failed === 0 ? 0 : 1);
