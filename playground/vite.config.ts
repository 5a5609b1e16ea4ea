import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig, runnerImport, type Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';

const { version } = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8')) as { version: string };

/** The built page may load nothing from anywhere else; the development server needs its own socket, so the rule is for the build.
 * Styles too come from files alone: what is set while drawing goes through the style objects, which the rule leaves free. */
function contentSecurityPolicy(): Plugin {
  const policy =
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; " +
    "connect-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'";
  return {
    name: 'content-security-policy',
    apply: 'build',
    transformIndexHtml: () => [
      { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content: policy }, injectTo: 'head-prepend' },
    ],
  };
}

/** The page trusts the knowledge it is built with, so it is checked here and not again by every reader's device.
 * Core is read from its source, as the page reads it: a fresh clone has nothing built. */
function checkedKnowledge(): Plugin {
  return {
    name: 'checked-knowledge',
    apply: 'build',
    async buildStart() {
      const { module } = await runnerImport<{ checkKnowledge(): void }>(
        fileURLToPath(new URL('checkKnowledge.ts', import.meta.url)),
        {
          logLevel: 'error',
          environments: { inline: { resolve: { conditions: ['source'], noExternal: [/^@faultodds\//] } } },
        },
      );
      module.checkKnowledge();
    },
  };
}

/** The knowledge is asked for together with the script, not after it. */
function earlyKnowledge(): Plugin {
  return {
    name: 'early-knowledge',
    apply: 'build',
    transformIndexHtml(_, { bundle, filename }) {
      if (!filename.endsWith('index.html')) return [];
      return Object.keys(bundle ?? {})
        .filter((name) => /(model|cases)-[\w-]+\.json$/.test(name))
        .map((name) => ({
          tag: 'link',
          attrs: { rel: 'preload', as: 'fetch', crossorigin: true, href: `./${name}` },
          injectTo: 'head-prepend' as const,
        }));
    },
  };
}

/** Writes `version.json` beside the page: what an open page of an earlier build says of the one that waits. */
function versionFile(): Plugin {
  return {
    name: 'version-file',
    apply: 'build',
    generateBundle(_, bundle) {
      const entry = Object.values(bundle).find((one) => one.type === 'chunk' && one.isEntry && one.name === 'index');
      const build = /-([\w-]+)\.js$/.exec(entry?.fileName ?? '')?.[1] ?? '';
      this.emitFile({ type: 'asset', fileName: 'version.json', source: JSON.stringify({ version, build }) });
    },
  };
}

export default defineConfig({
  plugins: [
    svelte(),
    checkedKnowledge(),
    earlyKnowledge(),
    contentSecurityPolicy(),
    versionFile(),
    VitePWA({
      registerType: 'prompt',
      injectRegister: false,
      workbox: {
        globPatterns: ['**/*.{js,css,html,svg,png,json}'],
        globIgnores: ['version.json'],
        cleanupOutdatedCaches: true,
        sourcemap: false,
      },
      manifest: {
        name: 'faultodds',
        short_name: 'faultodds',
        description: 'Where a persistent misfire on one cylinder most likely comes from, and what to do next.',
        start_url: './',
        scope: './',
        display: 'standalone',
        background_color: '#f6f7f5',
        theme_color: '#f6f7f5',
        icons: [
          { src: 'icon.svg', sizes: 'any', type: 'image/svg+xml' },
          { src: 'icon-192.png', sizes: '192x192', type: 'image/png' },
          { src: 'icon-512.png', sizes: '512x512', type: 'image/png' },
          { src: 'icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
        ],
      },
    }),
  ],
  base: './',
  define: { __VERSION__: JSON.stringify(version) },
  worker: { format: 'es' },
  resolve: { conditions: ['source', 'module', 'browser', 'development|production'] },
  build: {
    target: 'es2022',
    sourcemap: true,
    assetsInlineLimit: 0,
    rolldownOptions: {
      input: { index: 'index.html', examples: 'examples.html' },
      // what the page starts with is two files, not twenty: each costs a turn on the way
      output: {
        codeSplitting: {
          groups: [
            {
              name: 'page',
              tags: ['$initial'],
              test: (id) => !/\.html|[\\/](examples[\\/]|src[\\/](main|index)\.ts)|RankShiftSheet/.test(id),
            },
          ],
        },
      },
    },
  },
});
