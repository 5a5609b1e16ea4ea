/** Whether what is recorded lies on the device, and a start that does not succeed. */
export const savingLabels = {
  kept: 'Saved on this device.',
  pending: 'Saving …',
  notKept: 'Not saved on this device.',
  why: {
    refused:
      'Nothing is saved on this device: the browser does not let this page store anything. Everything works, but save the case as a file before you leave.',
    full: 'Nothing more can be saved on this device: its storage is full. Everything works, but save the case as a file before you leave, or delete cases you no longer need.',
    silent:
      'Nothing is saved on this device yet: its storage does not respond. Everything works, and is saved as soon as it responds. If you leave before that, save the case as a file.',
  },
  reading: 'Loading the saved cases …',
  noKnowledge:
    'The causes and tests could not be loaded, and without them there is nothing to show. The cases saved on this device are safe. Check the connection and try again.',
  retry: 'Try again',
};
