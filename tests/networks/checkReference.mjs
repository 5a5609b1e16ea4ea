// Compares the kernel with posteriors computed by other people's implementations, for every network of the reference folder.
// usage: node tests/networks/checkReference.mjs [networks folder] [posteriors folder]
// default folders: reference/networks and reference/posteriors below $FAULTODDS_REFERENCE or ../shared/reference
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { compileNetwork, createPropagation, defineNetwork, propagate, setFinding } from '@faultodds/inference';
import { parseBif } from '@faultodds/inference/formats';

const reference =
  process.env.FAULTODDS_REFERENCE ?? fileURLToPath(new URL('../../../shared/reference', import.meta.url));
const networks = process.argv[2] ?? join(reference, 'networks');
const posteriors = process.argv[3] ?? join(reference, 'posteriors');
const posteriorTolerance = 1e-12;
const logTolerance = 1e-11;
const bytes = { memoryLimitBytes: 2 ** 32 };

if (!existsSync(networks) || !existsSync(posteriors)) {
  console.error(`reference folders not found: ${networks}, ${posteriors}; nothing was compared`);
  process.exit(2);
}
let compared = 0;
let worst = 0;
let worstLog = 0;
let failed = 0;
for (const file of readdirSync(posteriors)
  .filter((name) => name.endsWith('.json'))
  .sort()) {
  const expected = JSON.parse(readFileSync(join(posteriors, file), 'utf8'));
  // rows are divided by their sum by defineNetwork, as the reference's README asks
  const network = defineNetwork(
    parseBif(readFileSync(join(networks, expected.networkFile ?? `${expected.network}.bif`), 'utf8')),
  );
  const compiled = compileNetwork(network, bytes);
  const propagation = createPropagation(compiled);
  let marginals = 0;
  let difference = 0;
  let logDifference = 0;
  // forwards and backwards through the cases: what is kept between questions must not show
  for (const one of [...expected.cases, ...[...expected.cases].reverse()]) {
    network.variables.forEach(({ name, states, index }) => {
      const seen = one.evidence[name];
      setFinding(propagation, index, seen === undefined ? -1 : states.indexOf(seen));
    });
    propagate(propagation);
    logDifference = Math.max(logDifference, Math.abs(propagation.logEvidence[0] - one.logPEvidence));
    for (const { name, index } of network.variables) {
      one.posteriors[name].forEach((value, state) => {
        const off = Math.abs(propagation.marginals[compiled.marginAt[index] + state] - value);
        difference = Number.isNaN(off) ? NaN : Math.max(difference, off);
      });
      marginals += 1;
    }
  }
  const good = difference <= posteriorTolerance && logDifference <= logTolerance;
  if (!good) failed += 1;
  compared += marginals;
  worst = Math.max(worst, difference);
  worstLog = Math.max(worstLog, logDifference);
  console.log(
    `${expected.network.padEnd(12)} ${String(marginals).padStart(6)} marginals, largest difference ${difference.toExponential(1)}, of log P(e) ${logDifference.toExponential(1)} ${good ? '' : 'TOO LARGE'}`,
  );
}
console.log(
  `${compared} marginals compared, largest difference ${worst.toExponential(2)} (tolerance ${posteriorTolerance}), of log P(e) ${worstLog.toExponential(2)} (tolerance ${logTolerance})`,
);
if (failed > 0 || compared === 0) process.exit(1);
