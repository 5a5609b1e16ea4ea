import { CommandError } from './commandError.ts';
import { readText } from './readText.ts';

/** The JSON of a file, or of standard input for `-`.
 * @throws CommandError when it cannot be read or is not JSON */
export function readJson(path: string): unknown {
  const text = readText(path);
  try {
    return JSON.parse(text);
  } catch (error) {
    const where = error instanceof Error ? error.message.split('\n')[0] : String(error);
    throw new CommandError(`'${path}' is not JSON: ${where}`);
  }
}
