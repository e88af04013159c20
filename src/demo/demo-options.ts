import { parseArgs } from 'node:util';
import type { DemoOptions } from './life/demo-plan.js';

/** What was asked of the demo on the command line; what was not said is null. */
export interface DemoWish {
  readonly days: number | null;
  readonly seed: number | null;
  readonly size: DemoOptions['size'] | null;
  readonly dataFolder: string | null;
  readonly port: number | null;
  readonly isServed: boolean;
  readonly isFresh: boolean;
}

export const usualDemo: DemoOptions = { days: 14, seed: 1, size: 'usual' };

/** A year and a bit. */
const mostDays = 400;

export const demoUsage = `npm run demo -- [--days N] [--seed S] [--size usual|large] [--data FOLDER] [--port N] [--fresh] [--no-serve]

  --days N       so many days, 1 to ${mostDays} (usual: ${usualDemo.days})
  --seed S       another plant (usual: ${usualDemo.seed}); the same seed gives the same plant
  --size large   200 000 packs of 2 kg a day on four lines
  --data FOLDER  where it is kept (usual: DATA_FOLDER, else ./data/demo)
  --port N       where it is served (usual: PORT, else 3000)
  --fresh        makes it anew
  --no-serve     only makes it`;

/**
 * Reads the command line.
 *
 * @throws {Error} saying what cannot be meant, with the usage
 */
export function readDemoWish(words: readonly string[]): DemoWish {
  try {
    const { values } = parseArgs({
      args: [...words],
      options: {
        days: { type: 'string' },
        seed: { type: 'string' },
        size: { type: 'string' },
        data: { type: 'string' },
        port: { type: 'string' },
        fresh: { type: 'boolean' },
        'no-serve': { type: 'boolean' },
      },
    });
    return {
      days: whole('days', values.days, [1, mostDays]),
      seed: whole('seed', values.seed, [0, 2_147_483_647]),
      size: sizeOf(values.size),
      dataFolder: values.data ?? null,
      port: whole('port', values.port, [0, 65_535]),
      isServed: values['no-serve'] !== true,
      isFresh: values.fresh === true,
    };
  } catch (error) {
    throw new Error(`${error instanceof Error ? error.message : String(error)}\n\n${demoUsage}`, { cause: error });
  }
}

function whole(name: string, text: string | undefined, [least, most]: readonly [number, number]): number | null {
  if (text === undefined) return null;
  const value = Number(text);
  if (text.trim() !== '' && Number.isInteger(value) && value >= least && value <= most) return value;
  throw new Error(`--${name} is "${text}"; it takes a whole number from ${least} to ${most}`);
}

function sizeOf(text: string | undefined): DemoOptions['size'] | null {
  if (text === undefined) return null;
  if (text === 'usual' || text === 'large') return text;
  throw new Error(`--size is "${text}"; it takes usual or large`);
}
