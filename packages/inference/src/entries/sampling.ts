// seeded draws, forward and from the posterior
export { sampleNetwork } from '../queries/sampleNetwork.ts';
export { posteriorSampler } from '../queries/posteriorSampler.ts';
export { seededRandom, type Random } from '../random/random.ts';
