// An independent physical check, for tests only: how full one cylinder gets when its valves open too little.
//
// Quasi-steady, single-zone filling and emptying of one motored cylinder, no wave action, no heat transfer in the gas exchange:
// conservation of mass and energy, and compressible flow through a restriction at each valve. Equations: Heywood, Internal Combustion Engine
// Fundamentals (1988), sections 6.2-6.3 and appendix C (flow through a restriction, choked below a pressure ratio of 0.528);
// Taylor, The Internal Combustion Engine in Theory and Practice, vol. 1, chapter 6 (inlet Mach index). Forms from memory; the figures
// are those of published check F4 of the reference folder, which the tests compare with.

/** Geometry and gas of the example engine of published check F4. SI units, crank degrees from firing top dead centre. */
const ENGINE = {
  bore: 0.086,
  stroke: 0.086,
  rod: 0.143,
  compressionRatio: 10,
  inlet: { valves: 2, diameter: 0.033, lift: 0.0095, opens: 350, closes: 590 },
  exhaust: { valves: 2, diameter: 0.028, lift: 0.009, opens: 130, closes: 370 },
  dischargeCoefficient: 0.6,
  /** Flow area of a valve never exceeds this share of its head. */
  seatShare: 0.85,
  pressure: 1e5,
  temperature: 300,
  gasConstant: 287,
  gamma: 1.4,
  /** Exponent of the compression stroke from inlet closing on. */
  polytropic: 1.3,
} as const;

/** What is wrong with the valves of a cylinder. Each from 0 to 1. */
export interface ValveFault {
  /** Share of the inlet lift that is left, timing kept. Default 1. */
  readonly inletLift?: number;
  /** Share of the inlet lift lost to play: the valve opens later, less far, and closes earlier. Default 0. */
  readonly inletPlay?: number;
  /** Share of the exhaust lift that is left. Default 1. */
  readonly exhaustLift?: number;
}

/** How full the cylinder is at inlet closing. */
export interface Filling {
  /** Charge above the clearance volume at ambient density, over the swept volume at ambient density. */
  readonly volumetricEfficiency: number;
  /** Absolute pressure at top dead centre of compression, Pa, without leakage. */
  readonly compression: number;
  /** Mean inlet Mach index (piston area times mean piston speed over mean effective inlet area times speed of sound). */
  readonly machIndex: number;
}

const DEGREE = Math.PI / 180;
const { gamma, gasConstant: R, pressure: P0, temperature: T0 } = ENGINE;
const PISTON_AREA = (Math.PI / 4) * ENGINE.bore ** 2;
const SWEPT = PISTON_AREA * ENGINE.stroke;
const CLEARANCE = SWEPT / (ENGINE.compressionRatio - 1);

/** Fills one cylinder, cycle after cycle until it repeats.
 * @param rpm crankshaft speed. @param step integration step in crank degrees. */
export function fillCylinder(rpm: number, fault: ValveFault = {}, step = 0.1): Filling {
  const { inletLift = 1, inletPlay = 0, exhaustLift = 1 } = fault;
  const inlet = (angle: number): number => flowArea(ENGINE.inlet, angle, inletLift, inletPlay);
  const exhaust = (angle: number): number => flowArea(ENGINE.exhaust, angle, exhaustLift, 0);
  const dt = step / (6 * rpm);
  let mass = (P0 * volume(ENGINE.exhaust.opens)) / (R * T0);
  let pressure: number = P0;
  for (let cycle = 0; cycle < 8; cycle += 1) {
    const before = mass;
    // volumes at exhaust opening and inlet closing are equal here, so the closed part of the cycle returns to the same state
    let energy = (pressure * volume(ENGINE.exhaust.opens)) / (gamma - 1);
    const steps = Math.round((ENGINE.inlet.closes - ENGINE.exhaust.opens) / step);
    for (let at = 0; at < steps; at += 1) {
      const angle = ENGINE.exhaust.opens + at * step;
      const [here, next] = [volume(angle), volume(angle + step)];
      const middle = angle + step / 2;
      const halfway = rates(mass, energy, here, inlet(angle), exhaust(angle), (next - here) / dt);
      const midMass = mass + (halfway.mass * dt) / 2;
      const midEnergy = energy + (halfway.energy * dt) / 2;
      const full = rates(midMass, midEnergy, volume(middle), inlet(middle), exhaust(middle), (next - here) / dt);
      mass += full.mass * dt;
      energy += full.energy * dt;
    }
    pressure = ((gamma - 1) * energy) / volume(ENGINE.inlet.closes);
    if (Math.abs(mass / before - 1) < 1e-6) break;
  }
  const density = P0 / (R * T0);
  return {
    volumetricEfficiency: (mass / density - CLEARANCE) / SWEPT,
    compression: pressure * (volume(ENGINE.inlet.closes) / CLEARANCE) ** ENGINE.polytropic,
    machIndex: machIndex(rpm, inlet),
  };
}

function rates(
  mass: number,
  energy: number,
  here: number,
  inletArea: number,
  exhaustArea: number,
  volumeRate: number,
): { mass: number; energy: number } {
  const pressure = ((gamma - 1) * energy) / here;
  const temperature = (pressure * here) / (mass * R);
  const enthalpy = (R * gamma) / (gamma - 1);
  const through = [inletArea, exhaustArea].map((area) => {
    // both pipes hold air at ambient state: what flows in is ambient, what flows out is cylinder gas
    return pressure < P0 ? orifice(area, P0, T0, pressure) : -orifice(area, pressure, temperature, P0);
  });
  const total = through[0]! + through[1]!;
  return { mass: total, energy: enthalpy * total * (pressure < P0 ? T0 : temperature) - pressure * volumeRate };
}

/** Mass flow through a restriction, kg/s. Near equal pressures the square root is replaced by a straight line, or the integration would
 * chatter. */
function orifice(area: number, from: number, temperature: number, to: number): number {
  if (area <= 0) return 0;
  const choked = (2 / (gamma + 1)) ** (gamma / (gamma - 1));
  const linear = 0.9995;
  const shape = (ratio: number): number =>
    ratio ** (1 / gamma) * Math.sqrt(((2 * gamma) / (gamma - 1)) * (1 - ratio ** ((gamma - 1) / gamma)));
  const ratio = Math.max(to / from, choked);
  const flow = ratio > linear ? (shape(linear) * (1 - ratio)) / (1 - linear) : shape(ratio);
  return ((ENGINE.dischargeCoefficient * area * from) / Math.sqrt(R * temperature)) * flow;
}

function flowArea(
  {
    valves,
    diameter,
    lift,
    opens,
    closes,
  }: { valves: number; diameter: number; lift: number; opens: number; closes: number },
  angle: number,
  left: number,
  play: number,
): number {
  if (angle <= opens || angle >= closes) return 0;
  const height = lift * Math.max(0, left * Math.sin((Math.PI * (angle - opens)) / (closes - opens)) ** 2 - play);
  return valves * Math.min(Math.PI * diameter * height, (ENGINE.seatShare * Math.PI * diameter ** 2) / 4);
}

function volume(angle: number): number {
  const crank = ENGINE.stroke / 2;
  const [sin, cos] = [Math.sin(angle * DEGREE), Math.cos(angle * DEGREE)];
  const travel = crank + ENGINE.rod - crank * cos - Math.sqrt(ENGINE.rod ** 2 - (crank * sin) ** 2);
  return CLEARANCE + PISTON_AREA * travel;
}

function machIndex(rpm: number, inlet: (angle: number) => number): number {
  const { opens, closes } = ENGINE.inlet;
  const points = 2000;
  let sum = 0;
  for (let at = 0; at < points; at += 1) sum += inlet(opens + ((at + 0.5) * (closes - opens)) / points);
  const effective = (ENGINE.dischargeCoefficient * sum) / points;
  const pistonSpeed = (2 * ENGINE.stroke * rpm) / 60;
  return (PISTON_AREA * pistonSpeed) / (effective * Math.sqrt(gamma * R * T0));
}
