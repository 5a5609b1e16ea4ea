import { writeFileSync } from 'node:fs';

/** Keeps what a long test found, for the test of every commit to be held against. */
export function storeResults(name: string, results: object): void {
  writeFileSync(new URL(`results/${name}.json`, import.meta.url), `${JSON.stringify(results, null, 2)}\n`);
}
