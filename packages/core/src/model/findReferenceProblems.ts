import { unknownId } from '../validation/findUnknownId.ts';
import { problemFor } from '../validation/problemFor.ts';
import { nearestId } from '../validation/nearestId.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import type { Model, Requirement } from './model.ts';
import type { ConditionalRow } from './row.ts';

type Named = readonly { readonly id: string }[];

/** Ids that occur twice or do not resolve. */
export function findReferenceProblems(model: Model): Problem[] {
  const found: Problem[] = [];
  const ids = (list: Named, path: string): Set<string> => {
    const seen = new Set<string>();
    list.forEach((item, at) => {
      if (seen.has(item.id)) {
        found.push(problemFor('id-duplicate', `${path}/${at}/id`, { id: item.id }));
      }
      seen.add(item.id);
    });
    return seen;
  };
  const known = {
    source: ids(model.sources, '/sources'),
    group: ids(model.causeGroups, '/causeGroups'),
    cause: ids(model.causes, '/causes'),
    mechanism: ids(model.mechanisms, '/mechanisms'),
    category: ids(model.testCategories, '/testCategories'),
    test: ids(model.tests, '/tests'),
    repair: ids(model.repairs, '/repairs'),
    access: ids(model.access, '/access'),
    equipment: ids(model.equipment, '/equipment'),
    caution: ids(model.cautions, '/cautions'),
    feature: ids(model.context, '/context'),
  };
  const values = new Map(
    model.context.map((feature, at) => [feature.id, ids(feature.values, `/context/${at}/values`)]),
  );
  const states = new Map(model.mechanisms.map((m, at) => [m.id, ids(m.states, `/mechanisms/${at}/states`)]));
  states.set('cause', known.cause);

  const need = (kind: keyof typeof known, id: string, path: string): void => {
    if (!known[kind].has(id)) {
      found.push(unknownId(kind, id, known[kind], path));
    }
  };
  const needValue = (feature: string, value: string, path: string): void => {
    const of = values.get(feature);
    if (of === undefined) need('feature', feature, path);
    else if (!of.has(value))
      found.push(problemFor('value-unknown/of-feature', path, { feature, value, nearest: nearestId(value, of) }));
  };
  const needRequirement = (requirement: Requirement, path: string): void => {
    for (const [feature, value] of Object.entries(requirement)) needValue(feature, value, `${path}/${feature}`);
  };
  const needConditions = (rows: readonly ConditionalRow[], path: string, allowed?: readonly string[]): void => {
    rows.forEach((row, at) => {
      for (const [parent, wanted] of Object.entries(row.when)) {
        const here = `${path}/${at}/when/${parent}`;
        const of = states.get(parent);
        if (of === undefined || (allowed !== undefined && !allowed.includes(parent))) {
          const nearest = nearestId(parent, allowed ?? states.keys());
          found.push(problemFor('mechanism-unknown/here', here, { id: parent, nearest }));
          continue;
        }
        wanted.forEach((state, s) => {
          if (!of.has(state))
            found.push(
              problemFor('state-unknown/of-mechanism', `${here}/${s}`, {
                mechanism: parent,
                state,
                nearest: nearestId(state, of),
              }),
            );
        });
      }
    });
  };

  model.context.forEach((feature, f) =>
    feature.values.forEach((value, v) => {
      for (const cause of Object.keys(value.multipliers))
        need('cause', cause, `/context/${f}/values/${v}/multipliers/${cause}`);
    }),
  );
  model.causes.forEach((cause, at) => {
    need('group', cause.group, `/causes/${at}/group`);
    if (cause.requires !== undefined) needRequirement(cause.requires, `/causes/${at}/requires`);
    for (const id of Object.keys(cause.states)) {
      const path = `/causes/${at}/states/${id}`;
      need('mechanism', id, path);
      const mechanism = model.mechanisms.find((m) => m.id === id);
      if (mechanism?.parents !== undefined) {
        found.push(problemFor('mechanism-dependent', path, { id }));
      }
    }
  });
  model.mechanisms.forEach((mechanism, at) => {
    mechanism.parents?.forEach((parent, p) => need('mechanism', parent, `/mechanisms/${at}/parents/${p}`));
    needConditions(mechanism.rows ?? [], `/mechanisms/${at}/rows`, mechanism.parents ?? []);
  });
  model.tests.forEach((test, at) => {
    const path = `/tests/${at}`;
    const outcomes = ids(test.outcomes, `${path}/outcomes`);
    if (test.persistsAs !== undefined && !outcomes.has(test.persistsAs)) {
      found.push(unknownId('outcome', test.persistsAs, outcomes, `${path}/persistsAs`));
    }
    test.follows?.forEach((look, l) => {
      const of = model.tests.find(({ id }) => id === look.test);
      if (of === undefined) need('test', look.test, `${path}/follows/${l}/test`);
      const seen = new Set(of?.outcomes.map((outcome) => outcome.id));
      look.outcomes.forEach((outcome, o) => {
        if (of !== undefined && !seen.has(outcome))
          found.push(unknownId('outcome', outcome, seen, `${path}/follows/${l}/outcomes/${o}`));
      });
    });
    for (const cause of Object.keys(test.mayCause ?? {})) need('cause', cause, `${path}/mayCause/${cause}`);
    need('category', test.category, `${path}/category`);
    need('access', test.access, `${path}/access`);
    test.equipment.forEach((id, e) => need('equipment', id, `${path}/equipment/${e}`));
    test.cautions.forEach((id, c) => need('caution', id, `${path}/cautions/${c}`));
    test.appliesWhen?.forEach((requirement, r) => needRequirement(requirement, `${path}/appliesWhen/${r}`));
    needConditions(test.rows, `${path}/rows`);
  });
  model.repairs.forEach((repair, at) => {
    const path = `/repairs/${at}`;
    for (const cause of Object.keys(repair.cures)) need('cause', cause, `${path}/cures/${cause}`);
    repair.access.forEach((id, a) => need('access', id, `${path}/access/${a}`));
    repair.cautions.forEach((id, c) => need('caution', id, `${path}/cautions/${c}`));
    if (repair.sameAs === undefined) return;
    need('test', repair.sameAs.test, `${path}/sameAs/test`);
    const outcomes = new Set(model.tests.find((test) => test.id === repair.sameAs?.test)?.outcomes.map((o) => o.id));
    for (const key of ['cured', 'notCured'] as const) {
      const outcome = repair.sameAs[key];
      if (outcomes.size > 0 && !outcomes.has(outcome)) {
        found.push(unknownId('outcome', outcome, outcomes, `${path}/sameAs/${key}`));
      }
    }
  });
  model.access.forEach((access, at) => {
    access.requires.forEach((id, r) => need('access', id, `/access/${at}/requires/${r}`));
    access.cautions.forEach((id, c) => need('caution', id, `/access/${at}/cautions/${c}`));
    access.cautionsClosing.forEach((id, c) => need('caution', id, `/access/${at}/cautionsClosing/${c}`));
  });
  model.verification.cautions.forEach((id, c) => need('caution', id, `/verification/cautions/${c}`));
  model.verification.checks.forEach((check, at) => {
    for (const [feature, wanted] of Object.entries(check.when)) {
      for (const value of wanted) needValue(feature, value, `/verification/checks/${at}/when/${feature}`);
    }
  });
  return found;
}
