// Adds every name the model has today to the names it ever had, so that none of them can vanish without a word: cases were saved with it.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { misfire } from '@faultodds/misfire';
import { partNames } from './partNames.mjs';

const file = fileURLToPath(new URL('../tests/fixtures/cases/namesEver.json', import.meta.url));
const before = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : [];
const names = new Set([...before, ...partNames(misfire)].map((name) => JSON.stringify(name)));
const lines = [...names].sort().map((name) => {
  const pairs = Object.entries(JSON.parse(name)).map(([kind, id]) => `${JSON.stringify(kind)}: ${JSON.stringify(id)}`);
  return `  { ${pairs.join(', ')} }`;
});
writeFileSync(file, `[\n${lines.join(',\n')}\n]\n`);
