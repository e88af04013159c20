import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { createServer } from 'node:net';
import { fileURLToPath } from 'node:url';

/** What `npm start` starts. */
export const mainFile = fileURLToPath(new URL('../../dist/src/main.joined.cjs', import.meta.url));

/** A server in a process of its own, as people run it. */
export interface RunningServer {
  readonly address: string;
  /** What it has printed so far. */
  output(): string;
  /** Stops it as the power cut does. */
  kill(): Promise<void>;
  /** Stops it as an operator does; answers its exit code. */
  stop(): Promise<number | null>;
}

/** Starts the built server on a free port and waits until it is ready. */
export async function startServer(settings: Readonly<Record<string, string>>): Promise<RunningServer> {
  const port = await freePort();
  const child = spawn(process.execPath, [mainFile], {
    env: { ...process.env, LOG_LEVEL: 'error', REQUESTS_PER_MINUTE: '1000000', ...settings, PORT: String(port) },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const printed: string[] = [];
  child.stdout.on('data', (data: Buffer) => printed.push(data.toString()));
  child.stderr.on('data', (data: Buffer) => printed.push(data.toString()));
  const address = `http://127.0.0.1:${port}`;
  const output = (): string => printed.join('');
  await untilReady(address, child, output);
  return {
    address,
    output,
    kill: () => end(child, 'SIGKILL').then(() => undefined),
    stop: () => end(child, 'SIGTERM'),
  };
}

async function untilReady(address: string, child: ChildProcess, output: () => string): Promise<void> {
  for (let attempt = 0; attempt < 600; attempt += 1) {
    if (child.exitCode !== null) break;
    const ready = await fetch(`${address}/readyz`).then(
      (answer) => answer.ok,
      () => false,
    );
    if (ready) return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  await end(child, 'SIGKILL');
  throw new Error(`the server did not start: ${output()}`);
}

async function end(child: ChildProcess, signal: 'SIGKILL' | 'SIGTERM'): Promise<number | null> {
  if (child.exitCode === null && child.signalCode === null) {
    const ended = once(child, 'exit');
    child.kill(signal);
    await ended;
  }
  return child.exitCode;
}

async function freePort(): Promise<number> {
  const probe = createServer().listen(0, '127.0.0.1');
  await once(probe, 'listening');
  const address = probe.address();
  probe.close();
  await once(probe, 'close');
  if (address === null || typeof address === 'string') throw new Error('no free port');
  return address.port;
}
