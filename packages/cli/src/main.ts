import { run } from './run.ts';
import { terminalOf } from './terminalOf.ts';

// `faultodds … | head` closes the pipe early: that is no failure
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});
process.exitCode = await run(process.argv.slice(2), terminalOf(process));
