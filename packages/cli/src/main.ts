import { errnoOf } from './errnoOf.ts';
import { oneLine } from './oneLine.ts';
import { reasonOf } from './reasonOf.ts';
import { run } from './run.ts';
import { terminalOf } from './terminalOf.ts';

const terminal = terminalOf(process);
const complain = (text: string): void => terminal.warn(`faultodds: ${oneLine(text)}\n`);

process.stdout.on('error', (error) => {
  // `faultodds … | head` closes the pipe early: that is no failure
  if (errnoOf(error) === 'EPIPE') process.exit();
  complain(`cannot write what was asked for: ${reasonOf(error)}`);
  process.exit(2);
});
// nobody can be told
process.stderr.on('error', () => {});

run(process.argv.slice(2), terminal).then(
  (code) => {
    process.exitCode = code;
  },
  (fault: unknown) => {
    const { message, stack = '' } = fault instanceof Error ? fault : { message: String(fault) };
    const [, at = ''] = /\n +at (.+)/.exec(stack) ?? [];
    complain(`a fault of faultodds itself, please report it: ${message}${at === '' ? '' : ` (${at})`}`);
    process.exitCode = 3;
  },
);
