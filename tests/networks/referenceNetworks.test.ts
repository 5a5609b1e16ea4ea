import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  compileNetwork,
  createPropagation,
  defineNetwork,
  posterior,
  propagate,
  setFinding,
  TreeWidthError,
} from '@faultodds/inference';
import { parseBif } from '@faultodds/inference/formats';
import { relevantNetwork } from '@faultodds/inference/analysis';
import { describe, expect, test } from 'vitest';
import { allPosteriors } from '../oracle/bucketElimination.mjs';

// Networks of the public repository kept with the bnlearn R package (Scutari), posteriors computed by other people's implementations: see
// the README files of the reference folder, which is not part of this repository. All fifteen networks: node tests/networks/checkReference.mjs
const reference = process.env['FAULTODDS_REFERENCE'] ?? join(import.meta.dirname, '../../../shared/reference');
const isHere = existsSync(reference);
const read = (...path: string[]): string => readFileSync(join(reference, ...path), 'utf8');
const why = isHere ? '' : ` (skipped: no reference folder at ../shared/reference or $FAULTODDS_REFERENCE)`;

interface Case {
  readonly evidence: Readonly<Record<string, string>>;
  readonly logPEvidence: number;
  readonly posteriors: Readonly<Record<string, readonly number[]>>;
}

describe.skipIf(!isHere)(`posteriors of published networks${why}`, () => {
  const names = [
    'cancer',
    'earthquake',
    'survey',
    'asia',
    'sachs',
    'child',
    'insurance',
    'alarm',
    'hailfinder',
    'hepar2',
    'win95pts',
    'andes',
  ];
  test.each(names)('%s: every marginal within 1e-13, log P(evidence) within 1e-12', (name) => {
    const network = defineNetwork(parseBif(read('networks', `${name}.bif`)));
    const { cases } = JSON.parse(read('posteriors', `${name}.json`)) as { cases: Case[] };
    expect(cases.length).toBe(10);
    const compiled = compileNetwork(network);
    const workspace = createPropagation(compiled);
    let worst = 0;
    for (const one of [...cases, ...cases.toReversed()]) {
      for (const { name: variable, states, index } of network.variables)
        setFinding(workspace, index, states.indexOf(one.evidence[variable] ?? ''));
      expect(propagate(workspace)).toBe(true);
      expect(Math.abs(workspace.logEvidence[0]! - one.logPEvidence)).toBeLessThan(1e-12);
      for (const { name: variable, index } of network.variables) {
        one.posteriors[variable]!.forEach((value, state) => {
          worst = Math.max(worst, Math.abs(workspace.marginals[compiled.marginAt[index]! + state]! - value));
        });
      }
    }
    expect(worst).toBeLessThan(1e-13);
  });

  test('the first kernel agrees on asia and alarm', () => {
    for (const name of ['asia', 'alarm']) {
      const network = defineNetwork(parseBif(read('networks', `${name}.bif`)));
      const { cases } = JSON.parse(read('posteriors', `${name}.json`)) as { cases: Case[] };
      const { evidence } = cases[6]!;
      const { marginals } = posterior(compileNetwork(network), evidence);
      const findings = Object.entries(evidence).map(([variable, state]) => {
        const at = network.indexOf.get(variable)!;
        return [at, network.variables[at]!.states.indexOf(state)];
      });
      const first = allPosteriors(network, findings).marginals as Float64Array[];
      for (const { name: variable, states, index } of network.variables) {
        states.forEach((state, s) => expect(marginals[variable]![state]).toBeCloseTo(first[index]![s]!, 13));
      }
    }
  });

  test('munin1 is refused before it is allocated, and its relevant parts are answered', () => {
    const network = defineNetwork(parseBif(read('networks', 'munin1.bif')));
    expect(() => compileNetwork(network)).toThrow(TreeWidthError);
    const part = relevantNetwork(network, [network.variables[100]!.name]);
    expect(part.variables.length).toBeLessThan(network.variables.length);
    const { marginals } = posterior(compileNetwork(part), {});
    const sum = Object.values(marginals[network.variables[100]!.name]!).reduce((total, p) => total + p, 0);
    expect(sum).toBeCloseTo(1, 13);
  });
});
