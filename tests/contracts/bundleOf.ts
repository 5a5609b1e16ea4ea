import { join, relative } from 'node:path';
import { build } from 'vite';
import { root } from '../fixtures/filesUnder.ts';

// a place to resolve packages from; no such file exists
const entry = join(root, 'tests/bundleEntry.js');

/** What a consumer's bundler makes of some code. */
export interface Bundle {
  /** Minified. */
  readonly code: string;
  /** Files of the repository of which something was kept, by their path in it. */
  readonly files: readonly string[];
}

/** Bundles code for a browser from the packages' sources, by Vite. All its exports are kept, and what they need. */
export async function bundleOf(code: string, external: readonly string[] = []): Promise<Bundle> {
  const result = await build({
    root,
    configFile: false,
    logLevel: 'silent',
    resolve: { conditions: ['source', 'module', 'browser', 'production'] },
    plugins: [
      {
        name: 'entry',
        resolveId: (id) => (id === entry ? id : undefined),
        load: (id) => (id === entry ? code : undefined),
      },
    ],
    build: {
      write: false,
      minify: true,
      target: 'es2022',
      // not lib mode, which leaves white space in
      rollupOptions: { input: entry, preserveEntrySignatures: 'strict', external: [...external] },
    },
  });
  const outputs = (Array.isArray(result) ? result : [result]).flatMap((one) => ('output' in one ? one.output : []));
  const chunks = outputs.flatMap((one) => (one.type === 'chunk' ? [one] : []));
  const kept = chunks.flatMap(({ modules }) =>
    Object.entries(modules).flatMap(([path, { renderedLength }]) => (renderedLength > 0 ? [path] : [])),
  );
  return {
    code: chunks.map((chunk) => chunk.code).join('\n'),
    files: kept.filter((path) => path !== entry).map((path) => relative(root, path).replaceAll('\\', '/')),
  };
}
