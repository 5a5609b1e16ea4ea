/** Something that was asked for cannot be done. The message is one line for standard error.
 * Exit code 2: what was given on the command line is unknown, cannot be read or cannot be written. */
export class CommandError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'CommandError';
  }
}
