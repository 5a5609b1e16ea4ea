import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  caseState,
  compileModel,
  factsOf,
  loadCase,
  makeNamesToday,
  parseModel,
  saveCase,
  beliefOf,
  type PartName,
} from '@faultodds/core';
import { misfire } from '@faultodds/misfire';
import { describe, expect, test } from 'vitest';
import { partNames } from '../../.tools/partNames.mjs';
import { findPartProblems } from '../../packages/core/src/model/findPartProblems.ts';
import { newestCaseVersion } from '../../packages/core/src/session/newestCaseVersion.ts';
import { documentOfLink } from '../../playground/src/device/shareLink.ts';
import { filesUnder, root } from '../fixtures/filesUnder.ts';

// What was saved once loads for ever. Where the files come from: tests/fixtures/cases/source.md.
const folder = 'tests/fixtures/cases';
const text = (path: string): string => readFileSync(join(root, path), 'utf8').trim();
const model = parseModel(misfire);
const compiled = compileModel(model);
const today = makeNamesToday(model);
const renamed = new Set((model.renamed ?? []).map(({ was }) => JSON.stringify(was)));

const cases = filesUnder(folder, '.json').filter((path) => /version-\d+/.test(path));
const links = filesUnder(folder, '.txt');
const plans = filesUnder(folder, '.json').filter((path) => /plan-\d+/.test(path));

/** Opens a document; everything in it counts, or was renamed away with a word, or never was in any model. */
function opened(document: unknown): { readonly kinds: readonly string[]; readonly lost: readonly string[] } {
  const session = loadCase(compiled, document);
  const { content, notices } = session;
  beliefOf(compiled, factsOf(caseState(session)));
  // what was opened can be saved and opened again
  expect(caseState(loadCase(compiled, JSON.parse(JSON.stringify(saveCase(compiled, session)))))).toEqual(content.state);
  const lost = notices.flatMap((one) => (one.kind === 'event-unplaced' ? [JSON.stringify(one.event)] : []));
  return { kinds: content.events.map(({ kind }) => kind), lost };
}

describe('cases', () => {
  test.each(Array.from({ length: newestCaseVersion }, (_, at) => at + 1))(
    'there is a kept case of version %d (a new version: save one, keep it, name it in source.md)',
    (version) => {
      const kept = cases.filter((path) => path.endsWith(`version-${version}.json`));
      expect(kept).toHaveLength(1);
      expect(JSON.parse(text(kept[0]!))).toMatchObject({ format: 'faultodds-case', version });
    },
  );

  test.each(cases)('%s loads, and nothing of it is lost', (path) => {
    const document = JSON.parse(text(path)) as { events: unknown[]; unplaced?: { event: unknown }[] };
    const { kinds, lost } = opened(document);
    expect(kinds.length).toBeGreaterThanOrEqual(document.events.length);
    expect(lost).toEqual((document.unplaced ?? []).map(({ event }) => JSON.stringify(event)));
  });
});

test('links of every form load, and nothing of them is lost', () => {
  expect(links.map((path) => path.split('/').at(-1))).toEqual([
    'link-1-of-version-2.txt',
    'link-1-of-version-3.txt',
    'link-1-without-checksum.txt',
  ]);
  for (const path of links) {
    const { kinds, lost } = opened(documentOfLink(text(path)));
    expect(kinds.length, path).toBeGreaterThan(15);
    expect(lost, path).toEqual([]);
  }
});

test.each(plans)('%s names steps that are known today', (path) => {
  interface Step {
    readonly kind: 'test' | 'repair' | 'refer';
    readonly id: string;
    readonly branches: readonly { readonly then?: Step }[];
  }
  const plan = JSON.parse(text(path)) as { format: string; version: number; root: Step };
  expect(plan).toMatchObject({ format: 'faultodds-plan', version: 1 });
  const stepsFrom = (step: Step): Step[] => [
    step,
    ...step.branches.flatMap(({ then }) => (then ? stepsFrom(then) : [])),
  ];
  for (const { kind, id } of stepsFrom(plan.root)) {
    const name: PartName = kind === 'test' ? { test: id } : { repair: id };
    expect(today(name).flatMap((one) => findPartProblems(model, one, ''))).toEqual([]);
  }
});

describe('names', () => {
  const ever = JSON.parse(text(`${folder}/namesEver.json`)) as PartName[];

  test('every name of today is on record (else: npm run names)', () => {
    const known = new Set(ever.map((name) => JSON.stringify(name)));
    expect(partNames(model).filter((name) => !known.has(JSON.stringify(name)))).toEqual([]);
  });

  test('every name a part ever had is one of today, or `renamed` says what became of it', () => {
    expect(ever.length).toBeGreaterThan(400);
    const vanished = ever.filter(
      (name) =>
        !renamed.has(JSON.stringify(name)) &&
        (today(name).length === 0 || today(name).some((one) => findPartProblems(model, one, '').length > 0)),
    );
    expect(vanished).toEqual([]);
  });
});
