import { errnoOf } from './files/errnoOf.ts';
import { oneLine } from './commands/oneLine.ts';
import { reasonOf } from './files/reasonOf.ts';
import { run } from './commands/run.ts';
import { terminalOf } from './terminal/terminalOf.ts';

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
