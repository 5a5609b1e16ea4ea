/** A direct sight of damage: a look and its confirmation, and the causes whose damage it is. */
export interface Sight {
  readonly look: string;
  readonly seen: string;
  readonly confirm: string;
  readonly confirmed: string;
  /** Any of these is what was seen; together they must reach 90 % when nothing contradicts. */
  readonly causes: readonly string[];
}

// a valve that does not lift as it should is a fact of the valvetrain; which part is to blame, the next look says
const LIFT = ['lifter-collapsed', 'rocker-dislodged', 'cam-lobe-worn', 'cam-bridge-cracked', 'spring-broken'];

const line = (look: string, seen: string, confirm: string, confirmed: string, ...causes: string[]): Sight => ({
  look,
  seen,
  confirm,
  confirmed,
  causes,
});

/** Every direct sight of damage in the misfire model that can be confirmed. */
export const sights: readonly Sight[] = [
  line('lobe-pair-angle', 'misaligned', 'lobe-angle-measured', 'out-of-line', 'cam-lobe-slipped'),
  line('bridge-inspection', 'cracked-or-fretted', 'bridge-crack-retest', 'crack-confirmed', 'cam-bridge-cracked'),
  line(
    'bearing-cap-bolts',
    'loose-or-stretched-bolt',
    'cap-bolts-remeasured',
    'stretched-or-pulled-out',
    'cam-bridge-cracked',
  ),
  line('rotate-and-watch', 'this-one-opens-less', 'lift-remeasured', 'opens-less', ...LIFT),
  line('rotate-and-watch', 'this-one-does-not-open', 'lift-remeasured', 'does-not-open', ...LIFT),
  line('valve-lift-dial', 'intake-low', 'lift-remeasured', 'opens-less', ...LIFT),
  line('valve-lift-dial', 'exhaust-low', 'lift-remeasured', 'opens-less', ...LIFT),
  line('valve-lift-dial', 'no-lift', 'lift-remeasured', 'does-not-open', ...LIFT),
  line('follower-lash-check', 'loose-or-soft', 'valvetrain-part-measured', 'lifter-soft', 'lifter-collapsed'),
  line('follower-lash-check', 'lobe-face-worn', 'valvetrain-part-measured', 'lobe-worn', 'cam-lobe-worn'),
  line('follower-lash-check', 'no-clearance', 'valvetrain-part-measured', 'no-clearance', 'lash-tight'),
  line('follower-lash-check', 'out-of-place', 'valvetrain-part-measured', 'part-displaced', 'rocker-dislodged'),
  line('follower-lash-check', 'spring-broken', 'valvetrain-part-measured', 'spring-broken', 'spring-broken'),
  line(
    'borescope-cylinder',
    'valve-edge-or-seat-damage',
    'borescope-second-look',
    'valve-edge-burnt-or-bent',
    'exhaust-valve-burnt',
    'intake-valve-leak',
  ),
  line('borescope-cylinder', 'valve-edge-or-seat-damage', 'borescope-second-look', 'seat-damaged', 'valve-seat'),
  line(
    'borescope-cylinder',
    'piston-or-bore-damage',
    'borescope-second-look',
    'piston-broken',
    'piston-holed',
    'ring-land',
  ),
  line('borescope-cylinder', 'piston-or-bore-damage', 'borescope-second-look', 'bore-scored', 'ring-land'),
  line('borescope-cylinder', 'heavy-deposit', 'borescope-second-look', 'deposit-under-valve', 'chamber-deposit'),
  line('borescope-cylinder', 'coolant-washed-or-wet', 'coolant-seep-watched', 'seeps-at-gasket', 'gasket-coolant'),
  line('borescope-cylinder', 'coolant-washed-or-wet', 'coolant-seep-watched', 'seeps-from-crack', 'head-cracked'),
  line('look-and-uv', 'tracking-or-wet-well', 'boot-and-well-retest', 'track-confirmed', 'secondary-leak'),
  line('look-and-uv', 'damaged-wiring', 'coil-feed-measured', 'wiring-at-fault', 'coil-circuit'),
  line('look-and-uv', 'damaged-wiring', 'injector-feed-measured', 'wiring-at-fault', 'injector-circuit'),
  line('look-and-uv', 'hose-or-gasket-visible', 'runner-leak-retest', 'leak-confirmed', 'runner-air-leak'),
  line('smoke-intake', 'leak-at-this-runner', 'runner-leak-retest', 'leak-confirmed', 'runner-air-leak'),
  line('plug-reading', 'cracked-or-loose', 'plug-second-look', 'crack-or-leak-confirmed', 'plug-cracked-loose'),
  line('isolate-egr-pcv', 'misfire-fades', 'feed-blocked-twice', 'follows-the-feed', 'egr-pcv-runner'),
  line('borescope-intake-valves', 'heavy-on-this-cylinder', 'deposits-compared', 'heavier-here', 'intake-deposits'),
];
