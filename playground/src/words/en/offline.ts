/** The page kept on the device, and newer versions of it. */
export const offlineLabels = {
  label: 'Newer version',
  version: (version: string, build: string) => (build === '' ? version : `${version}, build ${build}`),
  waiting: (next: string, now: string) =>
    `A newer version of this page is ready (${next}; this is ${now}). Your cases stay as they are.`,
  update: 'Use it now',
  later: 'Later',
  ready: 'This page now also works without a network.',
};
