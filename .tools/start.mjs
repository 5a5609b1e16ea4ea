// npm start: assembles the knowledge, builds the playground, serves it, opens it and prints its address.
import { fileURLToPath } from 'node:url';
import { build, preview } from 'vite';
import { writePriors } from './assemblePriors.mjs';

const playground = fileURLToPath(new URL('../playground', import.meta.url));
const shared = {
  root: playground,
  configFile: fileURLToPath(new URL('../playground/vite.config.ts', import.meta.url)),
};

writePriors();
await build({ ...shared, logLevel: 'warn' });
const server = await preview({
  ...shared,
  preview: {
    host: process.env.HOST ?? 'localhost',
    port: Number(process.env.PORT ?? 4173),
    open: process.stdout.isTTY === true && process.env.BROWSER !== 'none',
  },
});
console.log(`\nThe playground is at ${server.resolvedUrls?.local[0] ?? ''}\n(Ctrl-C stops it)`);
