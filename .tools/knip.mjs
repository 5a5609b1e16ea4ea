// What npm run check looks for: files, exports and exported types that nothing uses.
export default {
  include: ['files', 'exports', 'types', 'duplicates'],
  workspaces: {
    '.': {
      entry: ['.tools/*.mjs', 'tests/**/*.{test,browser,door,long}.ts', 'tests/**/*.mjs', 'tests/browser/serveOnce.ts'],
      project: ['.tools/**/*.mjs', 'tests/**/*.{ts,mjs}'],
    },
    'packages/inference': {
      entry: ['src/entries/*.ts', 'src/**/*.test.ts'],
      project: ['src/**/*.ts'],
    },
    'packages/core': {
      entry: ['src/entries/**/*.ts', 'src/**/*.test.ts'],
      project: ['src/**/*.ts'],
    },
    'packages/cli': {
      entry: ['src/main.ts', 'bin/*.mjs', 'src/**/*.test.ts'],
      project: ['src/**/*.ts', 'fixtures/*.ts'],
    },
    playground: {
      entry: ['src/**/*.browser.test.ts', 'checkKnowledge.ts', 'drawIcons.mjs'],
      project: ['src/**/*.{ts,svelte}', '*.{ts,mjs}'],
    },
  },
  compilers: {
    // of a component, what it imports, at once or when it is wanted
    svelte: (/** @type {string} */ text) => (text.match(/^\s*import[^;(]+;|\bimport\([^)]+\)/gm) ?? []).join('\n'),
  },
};
