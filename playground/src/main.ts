import casesAddress from '@faultodds/misfire/cases.json?url';
import modelAddress from '@faultodds/misfire/model.json?url';
import { mount, unmount } from 'svelte';
import App from './App.svelte';
import { openDevice } from './state/device.ts';
import { loadKnowledge } from './state/knowledge.ts';
import { createLanguage } from './state/language.svelte.ts';
import { keepOffline } from './state/offline.svelte.ts';
import { createPreferences } from './state/preferences.svelte.ts';
import { shareMark } from './state/shareMark.ts';
import { createTheme } from './state/theme.svelte.ts';
import { createWorkbench } from './state/workbench.svelte.ts';
import './styles/tokens.css';
import './styles/base.css';

// files of their own: the knowledge changes more often than the page, and as data it is read faster than as script
const [misfire, demoCases, language] = await Promise.all([
  read(modelAddress),
  read(casesAddress),
  createLanguage(navigator.languages, () => void drawAnew()),
]);
const knowledge = loadKnowledge(misfire, demoCases as readonly unknown[]);
const preferences = createPreferences();
const workbench = createWorkbench(knowledge, openDevice(), preferences, newId);
const theme = createTheme(document.documentElement);
await workbench.restore();
await openSharedCase();
addEventListener('hashchange', () => void openSharedCase());
const offline = keepOffline();
let app = draw();

function draw(): ReturnType<typeof mount> {
  const props = { knowledge, workbench, theme, preferences, offline, language };
  return mount(App, { target: document.getElementById('app')!, props });
}

/** The case stays open; only its words are others. */
async function drawAnew(): Promise<void> {
  await unmount(app);
  app = draw();
}

/** A case in the fragment is opened once; then the address is the page's own again, so that a reload does not open it anew. */
async function openSharedCase(): Promise<void> {
  const { hash, pathname, search } = location;
  if (!hash.startsWith(shareMark)) return;
  history.replaceState(null, '', `${pathname}${search}`);
  await workbench.openLink(hash);
}

/** Letters and digits, new every time; `randomUUID` is missing where the page is not served securely. */
function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(8));
  return `case-${Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')}`;
}

async function read(address: string): Promise<unknown> {
  return (await fetch(address)).json();
}
