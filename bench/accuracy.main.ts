import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { likelyModels } from '../test/truth/likely-models.js';
import { allFaults, type Fault } from '../test/truth/recorded-period.js';
import { accuracyPage } from './accuracy-page.js';
import { measureBounds } from './measure-bounds.js';
import { measureMistakes } from './measure-mistakes.js';

/** `npm run accuracy:write -- [--plants N] [--to FILE]`: compares what the science says with what is true; writes docs/accuracy.md. */
const { values } = parseArgs({ options: { plants: { type: 'string' }, to: { type: 'string' } } });
const plantCount = Number(values.plants ?? 200);
const faultSets: readonly (readonly Fault[])[] = [[], ...allFaults.map((fault) => [fault]), allFaults];

const rows = faultSets.map((faults) => {
  console.log(`${plantCount} plants, faults: ${faults.join(', ') || 'none'}`);
  return measureBounds(plantCount, faults, likelyModels);
});
const mistakes = [['scales'] as const, allFaults].map((faults) => {
  console.log(`the level check of ${plantCount} plants, faults: ${faults.join(', ')}`);
  return measureMistakes(plantCount, faults);
});
writeFileSync(values.to ?? 'docs/accuracy.md', await accuracyPage(plantCount, rows, mistakes));
