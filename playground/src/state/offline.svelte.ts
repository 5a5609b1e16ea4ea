import { registerSW } from 'virtual:pwa-register';

declare const __VERSION__: string;

/** A version of the page, and which build of it. */
export interface PageVersion {
  readonly version: string;
  readonly build: string;
}

/** The page as it is kept on this device, and a newer one that waits. */
export interface Offline {
  readonly here: PageVersion;
  /** From now on the page opens without a network. */
  readonly ready: boolean;
  /** A newer version is loaded and waits to be used. */
  readonly waiting: PageVersion | null;
  /** Opens the page anew in the version that waits; cases are kept as they are. */
  update(): void;
  later(): void;
}

/** Keeps the page on this device. Where the browser refuses (an address that is not secure), the page works as before, with a network. */
export function createOffline(): Offline {
  let ready = $state(false);
  let waiting = $state.raw<PageVersion | null>(null);
  const here = { version: __VERSION__, build: buildOf(document) };
  const update = registerSW({
    onOfflineReady: () => (ready = true),
    onNeedRefresh: async () => (waiting = await newest()),
    onRegisterError: () => undefined,
  });
  return {
    here,
    get ready() {
      return ready;
    },
    get waiting() {
      return waiting;
    },
    update: () => void update(true),
    later: () => (waiting = null),
  };

  async function newest(): Promise<PageVersion> {
    try {
      const answer = await fetch('version.json', { cache: 'no-store' });
      return (await answer.json()) as PageVersion;
    } catch {
      return { version: here.version, build: '' };
    }
  }
}

/** The build names its script; that is the name of the build. */
function buildOf(page: Document): string {
  const script = page.querySelector<HTMLScriptElement>('script[type=module][src]')?.src ?? '';
  return /-([\w-]+)\.js$/.exec(script)?.[1] ?? '';
}
