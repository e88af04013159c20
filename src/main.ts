import 'reflect-metadata';
import { Housekeeping } from './journal/housekeeping.js';
import { MqttLine } from './fill-weight/mqtt/mqtt-line.js';
import { createFirstAdministrator } from './people/first-start.js';
import { readConfig } from './platform/config.js';
import { JobRunner } from './platform/jobs/job-runner.js';
import { letHeapsGrowSlowly } from './platform/threads/heap-growth.js';
import { letEngineGoBehind } from './platform/threads/thread-priority.js';
import { buildHouse, openGround } from './start-house.js';

/** Starts the server. */
async function main(): Promise<void> {
  letEngineGoBehind();
  letHeapsGrowSlowly();
  const config = readConfig(process.env);
  const databases = await openGround(config);
  const house = await buildHouse(config, databases);
  await createFirstAdministrator(house, process.env);
  house.get(JobRunner).start();
  house.get(Housekeeping).start();
  house.get(MqttLine).start();
  await house.listen(config.port, config.host);
  stopGracefully(async () => {
    await house.close();
    await databases.close();
  });
}

/** On a signal: requests that run are finished, event streams closed, the databases last. A second signal stops at once. */
function stopGracefully(close: () => Promise<void>): void {
  for (const signal of ['SIGTERM', 'SIGINT'] as const) {
    process.once(signal, () => {
      close().then(
        () => process.exit(0),
        (error: unknown) => {
          process.stderr.write(`the stop failed: ${String(error)}\n`);
          process.exit(1);
        },
      );
    });
  }
}

main().catch((error: unknown) => {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
});
