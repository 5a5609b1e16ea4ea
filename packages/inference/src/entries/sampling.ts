// seeded draws, forward and from the posterior
export { sampleNetwork } from '../sampleNetwork.ts';
export { posteriorSampler } from '../posteriorSampler.ts';
export { seededRandom, type Random } from '../random.ts';
