import { compileModel, FaultoddsError, loadCase, parseModel, type Problem, type LanguageCode } from '@faultodds/core';
import { diagnosability, lintModel, type Diagnosability } from '@faultodds/core/authoring';
import { describeProblem } from '@faultodds/core/words';
import { closestName } from '../read/closestName.ts';
import { loadModel } from '../read/loadModel.ts';
import { paint } from '../terminal/paint.ts';
import { printDiagnosability } from '../print/printDiagnosability.ts';
import { printJson } from '../print/printJson.ts';
import { readModelParts, type ModelParts } from '../read/readModelParts.ts';
import type { Terminal } from '../terminal/terminal.ts';
import { wordsOf } from '../print/wordsOf.ts';

/** Options of `faultodds check`. */
export interface CheckOptions {
  readonly json?: boolean;
  /** Also what the model can tell apart, and what its numbers rest on. */
  readonly tables?: boolean;
  /** Of the problems. Default English. */
  readonly language?: LanguageCode;
}

/** Checks a model (a file, or a folder of parts) or a saved case and prints every problem with its place and a hint; for a valid
 * model also what is legal but suspicious. @returns exit code: 0 valid, 1 not.
 * @throws CommandError nothing to check can be read there */
export async function check(terminal: Terminal, path: string, options: CheckOptions): Promise<number> {
  const { json = false, tables = false, language } = options;
  const words = wordsOf(language);
  const parts = await readModelParts(path);
  const {
    kind,
    problems: found,
    summary,
    findings,
    diagnosability: report,
  } = isCase(parts.input) ? await checkCase(parts) : checkModel(parts);
  const problems = found.map((one) => ({ code: one.code, path: one.path, ...describeProblem(one, words) }));
  if (json) {
    const valid = problems.length === 0;
    const document = { format: 'faultodds-check', version: 1, kind, valid, problems, findings, diagnosability: report };
    printJson(terminal, document);
    return problems.length === 0 ? 0 : 1;
  }
  for (const { code, path: at, message, hint } of problems) {
    terminal.write(
      `${paint(terminal, 'strong', at)}\n  ${code}: ${message}\n  ${paint(terminal, 'dim', `hint: ${hint}`)}\n`,
    );
  }
  for (const { code, path: at, message } of findings) {
    terminal.write(`${at}\n  ${paint(terminal, 'dim', `${code}: ${message}`)}\n`);
  }
  if (tables && report !== undefined) printDiagnosability(terminal, report);
  terminal.write(`${problems.length === 0 ? summary : `${path}: ${count(problems.length, 'problem')}`}\n`);
  return problems.length === 0 ? 0 : 1;
}

interface Checked {
  readonly kind: 'model' | 'case';
  readonly problems: readonly Problem[];
  /** Legal but suspicious. */
  readonly findings: readonly { readonly code: string; readonly path: string; readonly message: string }[];
  readonly summary: string;
  /** For a valid model. */
  readonly diagnosability?: Diagnosability;
}

function checkModel({ input, locate }: ModelParts): Checked {
  const located = <T extends { readonly path: string }>(found: readonly T[]): T[] =>
    found.map((one) => ({ ...one, path: locate(one.path) }));
  try {
    const model = parseModel(input);
    const compiled = compileModel(model);
    const findings = located(lintModel(compiled));
    const { causes, mechanisms, tests, repairs, access } = model;
    const parts = [count(causes.length, 'cause'), count(mechanisms.length, 'mechanism'), count(tests.length, 'test')];
    const size = [...parts, count(repairs.length, 'repair'), `${access.length} access operations`].join(', ');
    const suspicious =
      findings.length === 0 ? 'nothing suspicious' : `${count(findings.length, 'finding')} worth checking`;
    const found = diagnosability(compiled);
    const bareJudgement = located(found.bareJudgement);
    return {
      kind: 'model',
      problems: [],
      findings,
      diagnosability: { ...found, bareJudgement },
      summary: `Valid model '${model.id}': ${size}; ${suspicious}.`,
    };
  } catch (error) {
    if (!(error instanceof FaultoddsError)) throw error;
    return { kind: 'model', problems: located(error.problems), findings: [], summary: '' };
  }
}

async function checkCase({ input, locate }: ModelParts): Promise<Checked> {
  try {
    const { content, notices } = loadCase((await loadModel()).compiled, input);
    const summary = `Valid case '${content.state.id}': ${count(content.events.length, 'event')}.`;
    const unplaced = notices.flatMap((one) => (one.kind === 'model-differs' ? [] : one.problems));
    return { kind: 'case', problems: unplaced, findings: [], summary };
  } catch (error) {
    if (!(error instanceof FaultoddsError)) throw error;
    const problems = error.problems.map((problem) => ({ ...problem, path: locate(problem.path) }));
    return { kind: 'case', problems, findings: [], summary: '' };
  }
}

/** A damaged format is still taken for a case when it was probably meant to be one. */
function isCase(input: unknown): boolean {
  if (typeof input !== 'object' || input === null || !('format' in input) || typeof input.format !== 'string')
    return false;
  return closestName(input.format, ['faultodds-case', 'faultodds-model']) === 'faultodds-case';
}

function count(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? '' : 's'}`;
}
