/** A small invented decision problem: 2-5 causes, up to 3 tests, 1-4 repairs, up to 2 openings, some of it open.
 * @param {() => number} random
 * @returns {import('@faultodds/core/planning').ProblemTables} */
export function randomTables(random) {
  const whole = (from, to) => from + Math.floor(random() * (to - from + 1));
  const row = (length, sharpness) => {
    const weights = Array.from({ length }, () => 0.02 + random() ** sharpness);
    const sum = weights.reduce((a, b) => a + b, 0);
    return weights.map((weight) => weight / sum);
  };
  const causes = whole(2, 5);
  const prior = row(causes, 3);
  // now and then a cause is ruled out
  if (random() < 0.1) prior.splice(0, prior.length, 0, ...row(causes - 1, 3));
  const openings = whole(0, 2);
  const somewhere = () => (openings > 0 && random() < 0.6 ? { access: whole(0, openings - 1) } : {});
  return {
    prior,
    access: Array.from({ length: openings }, (_, at) => ({
      cost: 1 + 30 * random(),
      ...(at > 0 && random() < 0.5 ? { requires: [0] } : {}),
    })),
    tests: Array.from({ length: whole(0, 3) }, (_, at) => {
      const outcomes = whole(2, 3);
      return {
        id: `test-${at + 1}`,
        cost: 1 + 15 * random(),
        ...somewhere(),
        // a drive closes what is open, its own access too; with the engine apart it has to wait
        ...(openings > 0 && random() < 0.3 ? { closes: [whole(0, openings - 1)] } : {}),
        ...(openings > 0 && random() < 0.15 ? { impossibleWith: [openings - 1] } : {}),
        ...(random() < 0.3
          ? { asleep: { chance: Array.from({ length: causes }, () => random()), again: 12 * random() } }
          : {}),
        ...(at > 0 && random() < 0.15 ? { answers: [at - 1] } : {}),
        ...(at > 0 && random() < 0.25 ? { follows: [{ test: at - 1, outcome: 0 }] } : {}),
        outcomeGivenCause: Array.from({ length: causes }, () => row(outcomes, 6)),
      };
    }),
    repairs: Array.from({ length: whole(1, 4) }, (_, at) => ({
      id: `repair-${at + 1}`,
      cost: 10 + 190 * random(),
      ...somewhere(),
      cures: Array.from({ length: causes }, (_, cause) =>
        cause === at || random() < 0.2 ? (random() < 0.3 ? 1 : 0.6 + 0.4 * random()) : 0,
      ),
    })),
    referralCost: Array.from({ length: causes }, () => 150 + 350 * random()),
    ...(openings > 0 && random() < 0.3 ? { open: [0] } : {}),
    ...(random() < 0.15 ? { limits: { money: 20 + 200 * random() } } : {}),
  };
}

/** The same with openings that count for more than their price where they prove needless: each opening or none of them counts.
 * @param {() => number} random
 * @returns {import('@faultodds/core/planning').ProblemTables} */
export function randomTablesWithOpenings(random) {
  const { access = [], ...tables } = randomTables(random);
  return {
    ...tables,
    access: access.map((one) => ({ ...one, opensEngine: random() < 0.8 })),
    needlessOpening: 10 + 300 * random(),
  };
}
