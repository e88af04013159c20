import 'reflect-metadata';
import { chainedSites, verifyJournal } from '../journal/verify-journal.js';
import { readConfig } from '../platform/config.js';
import { openToLook } from './open-to-look.js';

/** `npm run journal:verify [-- --head HASH]`: exits 1 and names the first entry that does not fit. */
async function main(): Promise<number> {
  const place = process.argv.indexOf('--head');
  const head = place < 0 ? null : (process.argv[place + 1] ?? '');
  if (head !== null && !/^[0-9a-f]{64}$/.test(head)) {
    process.stderr.write('--head takes the 64 hexadecimal digits that an account or a backup printed\n');
    return 2;
  }
  const look = await openToLook(readConfig(process.env));
  try {
    const sites = await chainedSites(look.from);
    const found = await Promise.all(
      sites.map((siteId) => verifyJournal(look.from, siteId, sites.length === 1 ? head : null)),
    );
    if (head !== null && sites.length !== 1)
      process.stdout.write('The head was not looked for: it belongs to one site.\n');
    for (const { siteId, entries, head: last, misfit } of found) {
      process.stdout.write(
        misfit === null
          ? `site ${siteId}: ${entries} entries, all fit; head ${last}\n`
          : `site ${siteId}: entry ${misfit.sequence} does not fit (${misfit.why})\n`,
      );
    }
    return found.some((one) => one.misfit !== null) ? 1 : 0;
  } finally {
    await look.close();
  }
}

process.exitCode = await main().catch((error: unknown) => {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  return 2;
});
