/** Whether what is recorded lies on the device, and a start that does not succeed. */
export const savingWords = {
  kept: 'Kept on this device.',
  pending: 'Being kept …',
  notKept: 'Not kept on this device.',
  why: {
    refused:
      'This device keeps nothing: the browser refuses this page its storage. Everything works, but save the case as a file before you leave.',
    full: 'This device keeps nothing more: its storage is full. Everything works, but save the case as a file before you leave, or delete cases you no longer need.',
    silent:
      'This device keeps nothing so far: its storage does not answer. Everything works, and is kept as soon as it answers. Save the case as a file should you leave before.',
  },
  reading: 'Reading the cases kept here …',
  noKnowledge:
    'What this page knows of causes and tests did not arrive, and without it there is nothing to show. The cases kept on this device are safe. Check the connection and try again.',
  retry: 'Try again',
};
