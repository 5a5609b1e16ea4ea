// seeded draws, forward and from the posterior
export { sampleNetwork } from '../queries/sampleNetwork.ts';
export { posteriorSampler } from '../queries/posteriorSampler.ts';
export { createRandom, type Random } from '../random/random.ts';
