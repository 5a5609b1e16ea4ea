import { existsSync } from 'node:fs';
import { FaultoddsError, loadCase, type CompiledModel, type Session } from '@faultodds/core';
import { closestName } from './closestName.ts';
import { CommandError } from '../terminal/commandError.ts';
import type { LoadedModel } from './loadModel.ts';
import type { CaseFile } from '../save/writeCaseFile.ts';
import { readJsonFile } from '../files/readJsonFile.ts';

/** A case by the name of a demo, by file, or from standard input (`-`), and the file it stands in.
 * @throws CommandError unknown, unreadable or not a valid case */
export async function readCase(
  { compiled, cases }: LoadedModel,
  name: string,
): Promise<{ readonly session: Session; readonly file?: CaseFile }> {
  const demos = new Map(cases.map((demo) => [caseIdOf(demo), demo]));
  const demo = demos.get(name);
  if (demo === undefined && name !== '-' && !existsSync(name)) {
    const closest = closestName(name, demos.keys());
    const hint = closest === undefined ? "'faultodds list cases' shows the demo cases" : `did you mean '${closest}'?`;
    throw new CommandError(`no demo case and no file '${name}'; ${hint}`);
  }
  if (demo !== undefined) return { session: loaded(compiled, demo, name) };
  const { json, bytes } = await readJsonFile(name);
  const session = loaded(compiled, json, name);
  return name === '-' ? { session } : { session, file: { path: name, content: bytes, ...schemaOf(json) } };
}

function loaded(compiled: CompiledModel, document: unknown, name: string): Session {
  try {
    return loadCase(compiled, document);
  } catch (error) {
    if (!(error instanceof FaultoddsError)) throw error;
    const [{ path = '', message = '' } = {}] = error.problems;
    const more =
      error.problems.length > 1
        ? `; 'faultodds check ${name}' lists all ${error.problems.length} problems`
        : `; ${error.hint}`;
    throw new CommandError(`'${name}' is not a valid case: ${message} at ${path || '/'}${more}`);
  }
}

function schemaOf(document: unknown): { $schema?: string } {
  const isStated = typeof document === 'object' && document !== null && '$schema' in document;
  return isStated && typeof document.$schema === 'string' ? { $schema: document.$schema } : {};
}

/** The id of an unparsed case document; `''` when it has none. */
export function caseIdOf(document: unknown): string {
  const id: unknown = typeof document === 'object' && document !== null && 'id' in document ? document.id : '';
  return typeof id === 'string' ? id : '';
}
