/** A drawing of what each policy costs: dot for the mean with its 95 % interval, ring for the mean on drawn models, line from the median
 * to the cost that nine cases in ten stay within. `rows` as simulate.mjs makes them. */
export function plotOfPolicies(rows, note) {
  const most = Math.max(...rows.map(({ fromTheModel }) => fromTheModel.ninetiethPercentileCost));
  const x = (cost) => (170 + (cost / most) * 520).toFixed(1);
  const lines = rows.map(({ policy, fromTheModel: one, fromModelsAsPlausible: drawn }, at) => {
    const y = 46 + at * 34;
    const range = `${one.meanLow.toFixed(0)} to ${one.meanHigh.toFixed(0)}, ${one.cases} cases`;
    return [
      `<text x="160" y="${y + 4}" text-anchor="end">${policy}</text>`,
      `<line x1="${x(one.medianCost)}" x2="${x(one.ninetiethPercentileCost)}" y1="${y}" y2="${y}" stroke="currentColor" stroke-opacity="0.4" stroke-width="3"/>`,
      `<line x1="${x(one.meanLow)}" x2="${x(one.meanHigh)}" y1="${y + 9}" y2="${y + 9}" stroke="currentColor" stroke-width="2"><title>95 % interval of the mean</title></line>`,
      `<circle cx="${x(one.meanCost)}" cy="${y}" r="5" fill="currentColor"><title>mean ${one.meanCost.toFixed(0)} (${range})</title></circle>`,
      `<circle cx="${x(drawn.meanCost)}" cy="${y}" r="5" fill="none" stroke="currentColor"><title>mean ${drawn.meanCost.toFixed(0)} on drawn models</title></circle>`,
      `<text x="${x(one.meanCost)}" y="${y - 9}" text-anchor="middle" font-size="10">${one.meanCost.toFixed(0)}</text>`,
    ].join('');
  });
  const height = 70 + rows.length * 34;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 720 ${height}" role="img" font-family="sans-serif" font-size="12" fill="currentColor"><title>Cost to a confirmed repair under each policy</title><text x="16" y="20" font-size="11">Cost to a confirmed repair: dot mean, bar below its 95 % interval (ring: on drawn models), line from median to nine in ten</text>${lines.join('')}<text x="16" y="${height - 10}" font-size="9">${note}</text></svg>\n`;
}
