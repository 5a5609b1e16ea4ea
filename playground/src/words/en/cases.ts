/** The list of cases, files and links. */
export const casesLabels = {
  heading: 'Cases',
  kept: 'Saved on this device',
  noneKept: 'Only this one so far.',
  find: 'Find a case',
  notFound: (words: string) => `No case matches “${words}”.`,
  remove: 'Delete',
  removeWhat: (title: string) => `Delete: ${title}`,
  removed: (title: string) => `Deleted: “${title}”.`,
  putBack: 'Undo',
  duplicate: 'Duplicate',
  duplicateWhat: (title: string) => `Duplicate: ${title}`,
  copyOf: (title: string) => `Copy of ${title}`,
  rename: 'Rename',
  renameWhat: (title: string) => `Rename: ${title}`,
  newName: (title: string) => `New name for ${title}`,
  renameDone: 'Save name',
  more: 'More',
  moreWhat: (title: string) => `Rename, duplicate or delete: ${title}`,
  current: 'open now',
  /** `changed` is a date and time. */
  standing: (results: number, cause: string, chance: string) =>
    results === 0
      ? `no result yet; leading: ${cause}, ${chance}`
      : `${results === 1 ? '1 result' : `${results} results`}; leading: ${cause}, ${chance}`,
  changed: (when: string) => `changed ${when}`,
  demo: 'Invented cases to replay',
  demoHint: 'Invented for practice, no real vehicle. Each is replayed one result at a time.',
  file: 'As a file',
  export: 'Save this case as a file',
  import: 'Open a case file',
  importHint: 'If the file cannot be read, nothing here is changed.',
  untitled: 'Unnamed case',
  fileName: (id: string) => `${id}.faultodds.json`,
  private: 'Cases stay on this device. Nothing is sent anywhere.',
  elsewhere: 'This case was changed in another window. This is the current version.',
  clash: (title: string) =>
    `This case was changed in another window at the same moment. Both are saved: yours continues here as “${title}”.`,
  late: 'The saved cases have loaded and are listed under Cases. The case you started stays open.',
  showMore: (count: number) => `Show ${count} more`,
  besides: (title: string) => `${title} (second window)`,
};
