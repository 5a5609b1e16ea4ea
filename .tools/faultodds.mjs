// npm run faultodds -- …: the terminal program, in the folder that npm was called from, so that file names mean what they say there.
// Plain Node, no dependencies: it answers before anything is installed or built.
import { chdir, env } from 'node:process';

if (env.INIT_CWD !== undefined) chdir(env.INIT_CWD);
await import('../packages/cli/bin/faultodds.mjs');
