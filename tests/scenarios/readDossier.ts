import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** A number of the dossier: best, 5-95 % range, equivalent sample size, source. */
export interface Number3 {
  best: number;
  low: number;
  high: number;
  ess: number;
  source: string;
}
/** A row of one of its tables. */
export interface DossierRow {
  when?: Record<string, string | string[]>;
  p: Record<string, number>;
  range90: Record<string, [number, number]>;
  ess: number;
  source: string;
}
/** A reading under one state. */
export interface Distribution {
  dist: string;
  mean: number;
  sd?: number;
  shape?: number;
  source: string;
}
/** The trade reference that priors/ encodes, as far as the tests read it. */
export interface Dossier {
  units: { labourRate: Number3 };
  sources: { id: string; kind: string; text: string; checked?: string }[];
  context: {
    cap: { low: number; high: number; source: string; ess: number };
    overlaps: [string, string][];
    features: { id: string; values: { value: string; multipliers: Record<string, Number3> }[] }[];
  };
  mechanisms: {
    roots: { id: string; label: string; states: string[]; background: DossierRow }[];
    dependent: { id: string; label: string; states: string[]; parents: string[]; rows: DossierRow[] }[];
  };
  causes: {
    id: string;
    label: string;
    group: string;
    description: string;
    customerFeels: string;
    collateralIfDriven: string;
    weight: Number3;
    activeFraction: Number3;
    requires: Record<string, string> | null;
    states: Record<string, DossierRow>;
    repair: { workHours: Number3; parts: Number3; access: string[]; success: Number3 };
  }[];
  tests: {
    id: string;
    label: string;
    category: string;
    outcomes: string[];
    rows: DossierRow[];
    reading: (Record<string, Distribution> & { unit: string; rule: string; ruleSource: string }) | null;
    appliesWhen: { anyOf: Record<string, string>[] } | null;
    time: Number3;
    consumables: Number3;
    repeatability: Number3;
    tools: string[];
    access: string;
    cautions: string[];
    faultMustBeActive: boolean;
  }[];
  dependentPairs: { a: string; b: string; shared: string; treatment: string }[];
  access: {
    id: string;
    label: string;
    requires: string[];
    openHours: Number3;
    closeHours: Number3;
    parts: Number3;
    cautions: string[];
  }[];
  cautions: Record<string, string>;
  verification: {
    order: string[];
    similarConditions: object;
    rule: object;
    table: { pattern: string; hours: number; km: number; days?: number }[];
    tableEss: number;
    accept: { countsPer1000Firings: number; monitorRun: string };
  };
  physics: {
    cases: Record<string, string>[];
    machIndex: { formula: string; assumption: string; limit: { value: number; source: string }; rows: object[] };
  };
  reasoningErrors: object[];
  glossary: Record<string, string>;
  demoCases: {
    id: string;
    title: string;
    context: Record<string, string>;
    steps: { test: string; outcome: string }[];
    trueCause: string;
    testCost: number;
    repairCost: number;
    totalCost: number;
    lesson: string;
  }[];
  hardPairs: { a: string; b: string; bestTest: string; totalVariation: number }[];
}

/** Reads trade/dossier.json from the folder FAULTODDS_REFERENCE names (or its neighbour), else from ../shared. Undefined, with a
 * message on the console, when it is absent: the caller skips visibly. */
export function readDossier(): Dossier | undefined {
  const folder = process.env['FAULTODDS_REFERENCE'] ?? fileURLToPath(new URL('../../../shared', import.meta.url));
  const file = [join(folder, 'trade/dossier.json'), join(folder, '../trade/dossier.json')].find((path) =>
    existsSync(path),
  );
  if (file !== undefined) return JSON.parse(readFileSync(file, 'utf8')) as Dossier;
  console.warn(
    'SKIPPED: trade/dossier.json is neither in ../shared nor where FAULTODDS_REFERENCE points; the data was not compared.',
  );
  return undefined;
}
