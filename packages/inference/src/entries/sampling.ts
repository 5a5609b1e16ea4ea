// seeded draws, forward and from the posterior
export { sampleNetwork } from '../queries/sampleNetwork.ts';
export { makePosteriorSampler } from '../queries/makePosteriorSampler.ts';
export { createRandom, type Random } from '../random/random.ts';
