import { createReadStream } from 'node:fs';
import { CommandError } from '../terminal/commandError.ts';
import { reasonOf } from './reasonOf.ts';

/** The most that is read from one file or from standard input, in MiB: the knowledge that comes with faultodds has a fiftieth of it. */
export const MOST_MIB = 16;

/** The same in bytes. */
export const MOST_BYTES: number = MOST_MIB * 1024 * 1024;

/** The bytes of a file, or of standard input for `-`, however slowly they come.
 * @throws CommandError when it cannot be read or is larger than `MOST_BYTES` */
export async function readBytes(path: string): Promise<Buffer> {
  const chunks: Buffer[] = [];
  let length = 0;
  try {
    for await (const chunk of path === '-' ? process.stdin : createReadStream(path)) {
      const bytes = Buffer.from(chunk as Uint8Array);
      length += bytes.length;
      if (length > MOST_BYTES) {
        throw new CommandError(`'${path}' is larger than ${MOST_MIB} MiB, which is the limit`);
      }
      chunks.push(bytes);
    }
  } catch (error) {
    if (error instanceof CommandError) throw error;
    throw new CommandError(`cannot read '${path}': ${reasonOf(error)}`);
  }
  return Buffer.concat(chunks);
}
