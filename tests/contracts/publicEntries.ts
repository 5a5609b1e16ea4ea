import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../fixtures/filesUnder.ts';

/** What a package's `exports` names as code: where a consumer imports it from, and its source. */
function entriesOf(folder: string): [specifier: string, source: string][] {
  const { name, exports } = JSON.parse(readFileSync(join(root, folder, 'package.json'), 'utf8')) as {
    name: string;
    exports: Readonly<Record<string, string | { readonly source?: string }>>;
  };
  return Object.entries(exports).flatMap(([path, target]) =>
    typeof target === 'object' && target.source !== undefined
      ? [[name + path.slice(1), join(root, folder, target.source)] as [string, string]]
      : [],
  );
}

const entries = ['packages/inference', 'packages/core'].flatMap(entriesOf);

/** Sources of every public entry of the engine. */
export const sourcesOfEntries: readonly string[] = entries.map(([, source]) => source);

/** Every public entry of the engine, loaded when asked for. */
export const publicEntries: Readonly<Record<string, () => Promise<object>>> = Object.fromEntries(
  entries.map(([specifier, source]) => {
    if (!existsSync(source)) throw new TypeError(`${specifier}: ${source} is missing`);
    return [specifier, () => import(/* @vite-ignore */ source) as Promise<object>];
  }),
);
