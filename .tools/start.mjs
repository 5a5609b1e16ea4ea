// npm start: assembles the knowledge, serves the playground and prints its address.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { createServer } from 'vite';

const root = fileURLToPath(new URL('..', import.meta.url));
spawnSync(process.execPath, ['.tools/assemblePriors.mjs'], { cwd: root, stdio: 'inherit' });

const server = await createServer({
  root: fileURLToPath(new URL('../playground', import.meta.url)),
  configFile: fileURLToPath(new URL('../playground/vite.config.ts', import.meta.url)),
  server: { host: process.env.HOST ?? 'localhost', port: Number(process.env.PORT ?? 5173) },
});
await server.listen();
const address = server.resolvedUrls?.local[0] ?? `http://localhost:${server.config.server.port}/`;
console.log(`\nThe playground is at ${address}\n(Ctrl-C stops it)`);
