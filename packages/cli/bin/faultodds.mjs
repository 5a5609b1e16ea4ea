#!/usr/bin/env node
// Plain Node, no dependencies: answers in one line before anything is installed or built.
import { existsSync } from 'node:fs';

const at = (path) => new URL(path, import.meta.url);
const isCheckout = existsSync(at('../tsconfig.json'));
const built = ['../dist/main.js', ...(isCheckout ? ['../../core/dist/index.js', '../../../priors/dist/index.js'] : [])];
const missing = [
  ...(isCheckout && !existsSync(at('../../../node_modules/commander/package.json')) ? ['npm ci'] : []),
  ...(built.every((path) => existsSync(at(path))) ? [] : ['npm run build']),
];

if (missing.length === 0) await import(at('../dist/main.js').href);
else {
  console.error(`faultodds: not ready yet; run first: ${missing.join(' && ')}`);
  process.exitCode = 2;
}
