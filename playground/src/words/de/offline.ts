import type { Labels } from '../t.ts';

/** The page kept on the device, and newer versions of it. */
export const offlineLabels: Labels['offline'] = {
  label: 'Neuere Fassung',
  version: (version, build) => (build === '' ? version : `${version}, Bau ${build}`),
  waiting: (next, now) =>
    `Eine neuere Fassung dieser Seite liegt bereit (${next}; diese ist ${now}). Ihre Fälle bleiben, wie sie sind.`,
  update: 'Jetzt verwenden',
  later: 'Später',
  ready: 'Diese Seite öffnet nun auch ohne Netz.',
};
