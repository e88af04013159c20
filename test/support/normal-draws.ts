import { seededRandom } from '../../src/demo/plant-physics/random.js';

/** Draws normal values about a centre, the same for the same seed and name. */
export function normalDraws(seed: number, name: string): (centre: number, spread: number) => number {
  const random = seededRandom(seed, name);
  return (centre, spread) => random.normal(centre, spread);
}
