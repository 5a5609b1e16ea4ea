import type { Quantity } from '@faultodds/core';

/** What of a repair departs from the dossier on purpose: minutes are `[best, low, high]`, with the dossier's before. */
interface RepairCorrection {
  readonly minutes?: Change;
  readonly parts?: Change;
  readonly access?: readonly string[];
  readonly because: string;
}
interface Change {
  readonly dossier: readonly [best: number, low: number, high: number];
  readonly ours: readonly [best: number, low: number, high: number];
}
const change = (dossier: Change['dossier'], ours: Change['ours']): Change => ({ dossier, ours });

const HEAD = 'the head and all before it take 720 minutes; the work comes on top';
const INJECTOR = 'opening and closing take 108 minutes; the work comes on top';
const PISTONS = 'with the engine open, a broken ring and a holed piston are one job';

/** cause -> what is different at the repair that the dossier gives it. */
export const correctedRepairs: Readonly<Record<string, RepairCorrection>> = {
  'coil-weak': { minutes: change([24, 12, 90], [30, 15, 90]), because: 'opening and closing take 24 minutes' },
  'injector-clogged': { minutes: change([90, 30, 270], [150, 60, 330]), because: INJECTOR },
  'injector-electrical': { minutes: change([90, 36, 270], [126, 54, 300]), because: INJECTOR },
  'injector-leaking': { minutes: change([96, 36, 270], [156, 66, 330]), because: INJECTOR },
  'runner-air-leak': {
    minutes: change([120, 48, 300], [210, 96, 420]),
    parts: change([40, 10, 150], [50, 20, 160]),
    because: 'the manifold takes 162 minutes, 192 with a turbocharger; its gaskets cost 30',
  },
  'egr-pcv-runner': { access: ['engine-dress-off'], because: 'valve, gasket and passage are reached from outside' },
  'intake-deposits': {
    minutes: change([180, 90, 300], [240, 120, 420]),
    parts: change([50, 20, 150], [60, 25, 170]),
    because: 'the manifold takes 162 minutes, 192 with a turbocharger; its gaskets cost 30',
  },
  'exhaust-valve-burnt': {
    minutes: change([840, 480, 1500], [900, 540, 1560]),
    parts: change([600, 250, 1500], [650, 300, 1700]),
    because: 'valves, guides and seats are one job with the head off',
  },
  'intake-valve-leak': {
    minutes: change([840, 480, 1500], [900, 540, 1560]),
    parts: change([600, 250, 1500], [650, 300, 1700]),
    because: 'valves, guides and seats are one job with the head off',
  },
  'valve-seat': {
    parts: change([700, 300, 1800], [650, 300, 1700]),
    because: 'valves, guides and seats are one job with the head off',
  },
  'ring-land': {
    minutes: change([1680, 1080, 2700], [1740, 1080, 2850]),
    parts: change([1500, 600, 4000], [1800, 700, 4500]),
    because: PISTONS,
  },
  'piston-holed': {
    minutes: change([1800, 1080, 3000], [1740, 1080, 2850]),
    parts: change([2200, 800, 5000], [1800, 700, 4500]),
    because: PISTONS,
  },
  'lifter-collapsed': {
    minutes: change([240, 90, 600], [420, 180, 840]),
    parts: change([120, 20, 500], [150, 40, 500]),
    access: ['camshaft-out'],
    because: 'most lifters come out with follower or camshaft out',
  },
  'cam-lobe-worn': {
    minutes: change([360, 180, 720], [420, 210, 780]),
    because: 'pushrods: the camshaft takes 651 minutes, and 360 times 1.6 are 576',
  },
  'cam-lobe-slipped': {
    minutes: change([360, 180, 720], [420, 210, 780]),
    because: 'pushrods: the camshaft takes 651 minutes, and 360 times 1.6 are 576',
  },
  'deactivation-stuck': { minutes: change([600, 300, 1080], [840, 480, 1440]), because: HEAD },
  'cam-sensor-phaser': {
    minutes: change([180, 30, 540], [690, 360, 1200]),
    parts: change([250, 40, 900], [400, 150, 1000]),
    because:
      'only the phaser needs the front cover off, which takes 606 minutes; sensor and valve are a repair of their own',
  },
  'flexplate-damaged': {
    minutes: change([420, 300, 660], [456, 300, 720]),
    because: 'transmission out and in takes 411 minutes; bolts and relearning take more than nine',
  },
};

/** Repairs that no cause of the dossier has, with the chances of success they have of their own. */
export const addedRepairs: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  'renew-cam-sensor-or-valve': { 'cam-sensor-phaser': 0.55 },
};

/** access -> its minutes. The dossier's head-off figures hold manifold and valve cover, which it requires besides. */
export const correctedOpening: Readonly<Record<string, { readonly open: Change; readonly close: Change }>> = {
  'head-off': { open: change([300, 180, 600], [168, 96, 360]), close: change([420, 240, 780], [276, 150, 540]) },
};

/** The number after its correction; what is no longer the dossier's is judgement. */
export function correctedQuantity(theirs: Quantity, change: Change | undefined): Quantity {
  if (change === undefined) return theirs;
  const [best, low, high] = change.ours;
  return { ...theirs, best, low, high, source: 'judgement' };
}

/** What the repair of a demo case costs more than in the dossier, whose minutes leave out opening and closing. */
export const dearerRepairs: Readonly<Record<string, number>> = {
  'demo-03': 80,
  'demo-04': 160,
  'demo-05': 150,
  'demo-08': 100,
  'demo-09': 400,
};
