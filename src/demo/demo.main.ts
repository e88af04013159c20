import 'reflect-metadata';
import { readConfig, type Config, type Environment } from '../platform/config.js';
import { clearFolder, planFolder } from './demo-folder.js';
import { readDemoWish, type DemoWish } from './demo-options.js';
import { makeDemo } from './make-demo.js';
import { progressBar } from './progress-bar.js';
import { serveDemo, type ServedDemo } from './serve-demo.js';

const usualFolder = './data/demo';

/** Makes the demo's plant where there is none yet, and serves it. */
async function main(words: readonly string[], environment: Environment): Promise<void> {
  const wish = readDemoWish(words);
  const config = configOf(wish, environment);
  const plan = planFolder(config.dataFolder, wish);
  const truth = plan.kind === 'serve' ? plan.truth : await make(config, plan.options);
  if (!wish.isServed) return;
  const served = await serveDemo(config, truth);
  for (const signal of ['SIGTERM', 'SIGINT'] as const) process.once(signal, () => void stop(served));
}

async function stop(served: ServedDemo): Promise<void> {
  await served.close().catch((error: unknown) => {
    process.stderr.write(`the stop failed: ${String(error)}\n`);
    process.exitCode = 1;
  });
  process.exit();
}

function make(config: Config, options: Parameters<typeof makeDemo>[1]): ReturnType<typeof makeDemo> {
  clearFolder(config.dataFolder);
  const quiet: Config = { ...config, logLevel: 'error' };
  return makeDemo(quiet, options, progressBar(`Alder Quay, ${options.days} ${options.days === 1 ? 'day' : 'days'}`));
}

function configOf(wish: DemoWish, environment: Environment): Config {
  const { DATA_FOLDER: folder, PORT: port, LOG_LEVEL: logLevel } = environment;
  return readConfig({
    ...environment,
    DATA_FOLDER: wish.dataFolder ?? (folder?.trim() ? folder : usualFolder),
    PORT: wish.port === null ? port : String(wish.port),
    LOG_LEVEL: logLevel?.trim() ? logLevel : 'error',
  });
}

main(process.argv.slice(2), process.env).catch((error: unknown) => {
  process.stderr.write(`\n${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
});
