import 'reflect-metadata';
import { createFirstAdministrator } from './people/first-start.js';
import { readConfig } from './platform/config.js';
import { JobRunner } from './platform/jobs/job-runner.js';
import { buildHouse, openGround } from './start-house.js';

/** Starts the server. */
async function main(): Promise<void> {
  const config = readConfig(process.env);
  const databases = await openGround(config);
  const house = await buildHouse(config, databases);
  await createFirstAdministrator(house, process.env);
  house.get(JobRunner).start();
  await house.listen(config.port, config.host);
}

main().catch((error: unknown) => {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
});
