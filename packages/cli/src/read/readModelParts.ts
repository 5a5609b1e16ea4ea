import { statSync } from 'node:fs';
import { relative } from 'node:path';
import { CommandError } from '../terminal/commandError.ts';
import { jsonFilesBelow } from '../files/jsonFilesBelow.ts';
import { MOST_BYTES, MOST_MIB } from '../files/readBytes.ts';
import { readJsonFile } from '../files/readJsonFile.ts';

/** A model kept in one file or in a folder of parts, joined, and where its values came from. */
export interface ModelParts {
  readonly input: unknown;
  /** A JSON Pointer into `input`, as "file pointer" within the folder. */
  readonly locate: (pointer: string) => string;
}

/** Reads a model: one file, or every JSON file below a folder in name order, lists of the same name joined.
 * @throws CommandError unreadable, not JSON, too much, or a value given twice */
export async function readModelParts(path: string): Promise<ModelParts> {
  if (!isFolder(path)) return { input: (await readJsonFile(path)).json, locate: (pointer) => pointer || '/' };
  const files = jsonFilesBelow(path);
  if (files.length === 0) throw new CommandError(`'${path}' contains no JSON files`);
  const input: Record<string, unknown> = {};
  const origins = new Map<string, { readonly file: string; readonly start: number }[]>();
  let length = 0;
  for (const file of files) {
    const { json: part, bytes } = await readJsonFile(file);
    length += bytes.length;
    if (length > MOST_BYTES) throw new CommandError(`the files below '${path}' add up to more than ${MOST_MIB} MiB`);
    if (typeof part !== 'object' || part === null || Array.isArray(part)) {
      throw new CommandError(`'${file}' is not a part of a model: it contains no object`);
    }
    for (const [key, value] of Object.entries(part)) {
      if (key === '$schema') continue;
      const before = Object.hasOwn(input, key) ? input[key] : undefined;
      if (before !== undefined && !(Array.isArray(before) && Array.isArray(value))) {
        throw new CommandError(`'${file}' gives "${key}", which another file also gives`);
      }
      const start = Array.isArray(before) ? before.length : 0;
      origins.set(key, [...(origins.get(key) ?? []), { file: relative(path, file), start }]);
      const joined = Array.isArray(before) && Array.isArray(value) ? [...before, ...value] : value;
      Object.defineProperty(input, key, { value: joined, enumerable: true, writable: true, configurable: true });
    }
  }
  return { input, locate: (pointer) => locate(pointer, origins) };
}

function locate(pointer: string, origins: ReadonlyMap<string, readonly { file: string; start: number }[]>): string {
  const [, key = '', position, ...rest] = pointer.split('/');
  const of = origins.get(key);
  const [first] = of ?? [];
  if (of === undefined || first === undefined) return pointer || '/';
  if (position === undefined || !/^\d+$/.test(position)) return `${first.file} ${pointer}`;
  const origin = of.findLast(({ start }) => start <= Number(position)) ?? first;
  return `${origin.file} /${[key, Number(position) - origin.start, ...rest].join('/')}`;
}

function isFolder(path: string): boolean {
  try {
    return path !== '-' && statSync(path).isDirectory();
  } catch {
    // reading it says why
    return false;
  }
}
