import { CommandError } from '../terminal/commandError.ts';
import { readBytes } from './readBytes.ts';
import { textOf } from './textOf.ts';

/** The JSON of a file, or of standard input for `-`, and the bytes it was read from.
 * @throws CommandError when it cannot be read or is not JSON */
export async function readJsonFile(path: string): Promise<{ readonly json: unknown; readonly bytes: Buffer }> {
  const bytes = await readBytes(path);
  const text = textOf(bytes, path);
  try {
    return { json: JSON.parse(text) as unknown, bytes };
  } catch (error) {
    const where = error instanceof Error ? error.message.split('\n')[0] : String(error);
    throw new CommandError(`'${path}' is not JSON: ${where}`);
  }
}
