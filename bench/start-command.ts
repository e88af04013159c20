import { readFileSync } from 'node:fs';

/** How `npm start` starts the server. */
export interface StartCommand {
  /** What it sets in the environment. */
  readonly environment: Readonly<Record<string, string>>;
  /** Of Node, before the file. */
  readonly flags: readonly string[];
  readonly file: string;
}

/** Read from `package.json`, so that a bench measures what runs. */
export function startCommand(): StartCommand {
  const { scripts } = JSON.parse(readFileSync('package.json', 'utf8')) as { scripts: { start: string } };
  const words = scripts.start.split(' ');
  const node = words.indexOf('node');
  if (node < 0) throw new Error(`no start of Node: ${scripts.start}`);
  const settings = words.slice(0, node).map((word) => word.split('=') as [string, string]);
  return {
    environment: Object.fromEntries(settings),
    flags: words.slice(node + 1, -1),
    file: words.at(-1) ?? '',
  };
}
