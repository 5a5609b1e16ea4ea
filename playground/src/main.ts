import casesAddress from '@faultodds/misfire/cases.json?url';
import modelAddress from '@faultodds/misfire/model.json?url';
import { mount, unmount } from 'svelte';
import App from './App.svelte';
import StartTrouble from './screens/StartTrouble.svelte';
import { openDevice } from './device/device.ts';
import { type Knowledge, loadKnowledge } from './knowledge/knowledge.ts';
import { createLanguage } from './state/language.svelte.ts';
import { createOffline } from './state/offline.svelte.ts';
import { createPreferences } from './state/preferences.svelte.ts';
import { fetchJson } from './device/fetchJson.ts';
import { shareMark } from './device/shareMark.ts';
import { createTheme } from './state/theme.svelte.ts';
import { within } from './device/within.ts';
import { createWorkbench, type Workbench } from './state/workbench.svelte.ts';
import './styles/tokens.css';
import './styles/base.css';

/** A device that is well answers far sooner; the page is drawn without it otherwise. Milliseconds. */
const DEVICE = 1_000;

// the device is asked while the knowledge is on its way
const device = openDevice();
const lastOpen = device.readLastOpen();
lastOpen.catch(() => undefined); // said by the workbench
const theme = createTheme(document.documentElement);
const preferences = createPreferences();
const language = await createLanguage(navigator.languages, () => void drawAnew());
let draw: (() => ReturnType<typeof mount>) | undefined;
let app: ReturnType<typeof mount> | undefined;
await begin();

/** Nothing can be drawn without the knowledge: when it does not come, that is said, with a button to try again. */
async function begin(): Promise<void> {
  let knowledge: Knowledge;
  try {
    // files of their own: the knowledge changes more often than the page, and as data it is read faster than as script
    const [misfire, demoCases] = await Promise.all([fetchJson(modelAddress), fetchJson(casesAddress)]);
    knowledge = loadKnowledge(misfire, demoCases as readonly unknown[]);
  } catch {
    draw = () => mount(StartTrouble, { target: emptyContainer(), props: { onretry: () => void begin() } });
    await drawAnew();
    return;
  }
  const workbench = createWorkbench(knowledge, device, preferences, newId);
  const restored = workbench.restore(lastOpen).then(() => openSharedCase(workbench));
  await within(DEVICE, restored).catch(() => undefined);
  addEventListener('hashchange', () => void openSharedCase(workbench));
  const offline = createOffline();
  draw = () =>
    mount(App, { target: emptyContainer(), props: { knowledge, workbench, theme, preferences, offline, language } });
  await drawAnew();
  // a device that keeps silent does not keep a shared case away
  await openSharedCase(workbench);
}

/** The case stays open; only what stands around it is another. */
async function drawAnew(): Promise<void> {
  if (app !== undefined) await unmount(app);
  app = draw?.();
}

/** Where the page is drawn, without what stood there before its script came. */
function emptyContainer(): HTMLElement {
  const target = document.getElementById('app')!;
  target.replaceChildren();
  return target;
}

/** A case in the fragment is opened once; then the address is the page's own again, so that a reload does not open it anew. */
async function openSharedCase(workbench: Workbench): Promise<void> {
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
