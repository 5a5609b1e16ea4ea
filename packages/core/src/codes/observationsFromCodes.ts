import { engineLimits } from '../reading/engineLimits.ts';
import * as z from 'zod/mini';
import { optionSchemas } from '../validation/optionSchemas.ts';
import { checkOptions } from '../validation/checkOptions.ts';
import type { TestResult } from '../evidence/observation.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { CodeOptions, CodeObservations, CodeRemark, UnusedCode, DecodedCode } from './codeObservations.ts';
import { describeTroubleCode, type CodeMeaning } from './describeTroubleCode.ts';
import type { TestFilledByCodes } from './isFilledByCodes.ts';
import type { TroubleCode } from './troubleCode.ts';

const cylinder = optionSchemas.whole(1, engineLimits.most);
const circumstancesSchema = z.strictObject({
  suspectCylinder: cylinder,
  cylinders: optionSchemas.whole(engineLimits.least, engineLimits.most),
  bank: z.optional(z.literal([1, 2])),
  cylinderOfCoil: z.optional(z.record(z.string(), cylinder)),
  listIsComplete: z.optional(z.boolean()),
  idPrefix: z.optional(z.string().check(z.minLength(1))),
});

/** Turns codes (`parseTroubleCodes`) into results of the tests that read codes (`isFilledByCodes`; those that the model has), for the
 * suspect cylinder. Pending, stored and permanent codes count alike; the status is in the note.
 * @throws OptionError options that no engine has
 * @example
 * ```ts
 * const { codes } = parseTroubleCodes('P0303, P0316');
 * const { observations, kept } = observationsFromCodes(compiled, codes, { suspectCylinder: 3, cylinders: 4 });
 * observations.map(({ test, outcome }) => [test, outcome]); // [['read-misfire-codes', 'one-cylinder-only']]
 * kept.map(({ code, reason }) => [code.code, reason]); // [['P0316', 'circumstance']]
 * ``` */
export function observationsFromCodes(
  compiled: CompiledModel,
  codes: readonly TroubleCode[],
  circumstances: CodeOptions,
): CodeObservations {
  checkOptions(circumstancesSchema, circumstances);
  checkOptions(z.looseObject({ suspectCylinder: optionSchemas.whole(1, circumstances.cylinders) }), circumstances);
  const read = codes.map((code): DecodedCode => ({ code, meaning: describeTroubleCode(code.code) }));
  const findings = [misfireFinding, circuitFinding, mixtureFinding, camFinding].flatMap(
    (find) => find(read, circumstances) ?? [],
  );
  const used = new Set(findings.flatMap(({ from }) => from));
  return {
    observations: findings.flatMap((finding) => resultOf(compiled, finding, circumstances.idPrefix ?? 'codes')),
    kept: read
      .filter((one) => !used.has(one))
      .map((one): UnusedCode => ({ ...one, reason: reasonOf(one.meaning, circumstances) })),
    remarks: remarksOn(read, circumstances),
  };
}

interface CodeFinding {
  readonly test: TestFilledByCodes;
  /** One outcome, or several that codes speak for alike. */
  readonly outcomes: readonly string[];
  readonly from: readonly DecodedCode[];
}

// More than 90 % of all misfires on one cylinder may store its code alone, else the multiple code joins it: 13 CCR 1968.2 (e)(3.1.3)
function misfireFinding(read: readonly DecodedCode[], circumstances: CodeOptions): CodeFinding | undefined {
  const test = 'read-misfire-codes';
  const from = read.filter(({ meaning }) => meaning.kind === 'misfire' && within(meaning, circumstances));
  const ofSuspect = from.filter(({ meaning }) => isSuspect(meaning, circumstances));
  if (ofSuspect.length > 0) {
    const alone = ofSuspect.length === from.length;
    return { test, outcomes: [alone ? 'one-cylinder-only' : 'one-cylinder-and-random'], from };
  }
  const toldApart = from.some(({ meaning }) => cylinderOf(meaning, circumstances) !== undefined);
  if (from.length > 0) return toldApart ? undefined : { test, outcomes: ['random-only'], from };
  return absence(test, 'none-stored', circumstances);
}

function circuitFinding(read: readonly DecodedCode[], circumstances: CodeOptions): CodeFinding | undefined {
  const test = 'read-circuit-codes';
  const from = read.filter(
    ({ meaning }) =>
      (meaning.kind === 'coil-circuit' || meaning.kind === 'injector-circuit') && isSuspect(meaning, circumstances),
  );
  // a control-module output or a common supply may set both: then either is said alike
  const outcomes = [...new Set(from.map(({ meaning }) => meaning.kind))];
  return outcomes.length > 0 ? { test, outcomes, from } : absence(test, 'none', circumstances);
}

function mixtureFinding(read: readonly DecodedCode[], circumstances: CodeOptions): CodeFinding | undefined {
  const test = 'read-mixture-codes';
  const from = read.filter(({ meaning }) => meaning.kind === 'mixture' && onBank(meaning, circumstances));
  const outcomes = [...new Set(from.flatMap(({ meaning }) => (meaning.kind === 'mixture' ? [meaning.direction] : [])))];
  if (outcomes.length > 1) return undefined;
  return outcomes.length === 1 ? { test, outcomes, from } : absence(test, 'none', circumstances);
}

function camFinding(read: readonly DecodedCode[], circumstances: CodeOptions): CodeFinding | undefined {
  const test = 'read-cam-codes';
  const from = read.filter(({ meaning }) => meaning.kind === 'cam' && onBank(meaning, circumstances));
  return from.length > 0 ? { test, outcomes: ['present'], from } : absence(test, 'none', circumstances);
}

function absence(
  test: TestFilledByCodes,
  outcome: string,
  { listIsComplete = false }: CodeOptions,
): CodeFinding | undefined {
  return listIsComplete ? { test, outcomes: [outcome], from: [] } : undefined;
}

function resultOf(compiled: CompiledModel, { test, outcomes, from }: CodeFinding, prefix: string): TestResult[] {
  const known = compiled.tests.get(test)?.outcomes ?? [];
  const [first] = outcomes;
  if (first === undefined || !outcomes.every((outcome) => known.includes(outcome))) return [];
  const note = from.map(({ code: { code, status } }) => (status === 'stored' ? code : `${code} ${status}`)).join(', ');
  return [
    {
      kind: 'result',
      id: `${prefix}-${test}`,
      test,
      ...(outcomes.length === 1 ? { outcome: first } : { likelihood: Object.fromEntries(outcomes.map((o) => [o, 1])) }),
      ...(note === '' ? {} : { note }),
    },
  ];
}

function cylinderOf(meaning: CodeMeaning, { cylinderOfCoil }: CodeOptions): number | undefined {
  if (meaning.kind === 'misfire' || meaning.kind === 'injector-circuit') return meaning.cylinder;
  if (meaning.kind !== 'coil-circuit' || meaning.coil === undefined) return undefined;
  return cylinderOfCoil?.[meaning.coil] ?? 'ABCDEFGHIJKL'.indexOf(meaning.coil) + 1;
}

function isSuspect(meaning: CodeMeaning, circumstances: CodeOptions): boolean {
  return cylinderOf(meaning, circumstances) === circumstances.suspectCylinder;
}

function within(meaning: CodeMeaning, circumstances: CodeOptions): boolean {
  return (cylinderOf(meaning, circumstances) ?? 1) <= circumstances.cylinders;
}

function onBank(meaning: { readonly bank: 1 | 2 }, { bank }: CodeOptions): boolean {
  return bank === undefined || meaning.bank === bank;
}

function reasonOf(meaning: CodeMeaning, circumstances: CodeOptions): UnusedCode['reason'] {
  if (meaning.kind === 'other') return 'says-nothing-here';
  if (meaning.kind === 'circumstance') return 'circumstance';
  if (meaning.kind === 'mixture' || meaning.kind === 'cam') {
    return onBank(meaning, circumstances) ? 'contradictory' : 'other-bank';
  }
  if (cylinderOf(meaning, circumstances) === undefined) return 'cylinder-not-told';
  return within(meaning, circumstances) ? 'other-cylinder' : 'beyond-the-engine';
}

function remarksOn(read: readonly DecodedCode[], circumstances: CodeOptions): CodeRemark[] {
  const codes = (fits: (meaning: CodeMeaning) => boolean): string[] =>
    read.flatMap(({ code, meaning }) => (fits(meaning) ? [code.code] : []));
  const assumed = codes(
    (meaning) =>
      meaning.kind === 'coil-circuit' &&
      meaning.coil !== undefined &&
      circumstances.cylinderOfCoil?.[meaning.coil] === undefined,
  );
  const named = codes((meaning) => meaning.kind === 'misfire' && meaning.cylinder !== undefined);
  const suspectNamed = read.some(({ meaning }) => meaning.kind === 'misfire' && isSuspect(meaning, circumstances));
  const unlearned = codes(
    (meaning) => meaning.kind === 'circumstance' && meaning.circumstance === 'crank-pattern-not-learned',
  );
  const remarks: CodeRemark[] = [];
  if (assumed.length > 0) remarks.push({ kind: 'coil-order-assumed', codes: assumed });
  if (named.length > 0 && !suspectNamed) remarks.push({ kind: 'suspect-not-named', codes: named });
  if (unlearned.length > 0) remarks.push({ kind: 'counts-doubtful', codes: unlearned });
  return remarks;
}
