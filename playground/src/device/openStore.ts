import type { UseStore } from 'idb-keyval';

/** A store of its own database. Opened at the first question; when that fails, the next question tries again.
 * What is written counts as written once it lies on the disk, not already in the memory of the system. Every promise rejects where the
 * browser keeps nothing, and never settles where it does not answer. */
export function openStore(database: string, store: string): UseStore {
  let opening: Promise<IDBDatabase> | undefined;

  function open(): Promise<IDBDatabase> {
    opening ??= new Promise((resolve, reject) => {
      // the browser may have none at all, and says so in many ways: here it is always a DOMException
      if (!('indexedDB' in globalThis) || !globalThis.indexedDB) throw new DOMException('', 'NotSupportedError');
      const request = indexedDB.open(database);
      request.onupgradeneeded = () => request.result.createObjectStore(store);
      request.onerror = () => reject(request.error ?? new DOMException('', 'UnknownError'));
      request.onsuccess = () => {
        // some browsers close a connection that rests
        request.result.onclose = () => (opening = undefined);
        resolve(request.result);
      };
    });
    opening.catch(() => (opening = undefined));
    return opening;
  }

  return async (mode, ask) => ask((await open()).transaction(store, mode, { durability: 'strict' }).objectStore(store));
}
