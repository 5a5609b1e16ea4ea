#!/usr/bin/env node
// Plain Node, no dependencies: answers in one line before anything is installed or built.
import { existsSync } from 'node:fs';

const at = (path) => new URL(path, import.meta.url);
const inCheckout = ['../../core/dist/index.js', '../../../priors/dist/index.js', '../../../node_modules/commander'];
const needed = ['../dist/main.js', ...(existsSync(at('../tsconfig.json')) ? inCheckout : [])];

if (needed.every((path) => existsSync(at(path)))) await import(at('../dist/main.js').href);
else {
  console.error('faultodds: not ready yet; run first: npm run build');
  process.exitCode = 2;
}
