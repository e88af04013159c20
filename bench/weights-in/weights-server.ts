import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { Agent, request } from 'node:http';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { startCommand } from '../start-command.js';
import type { ReadyBatch } from './weight-batches.js';

const port = 4631;
const ticksPerSecond = 100;

/** Where a house of the bench keeps its records. */
export interface BenchPlace {
  readonly dataFolder: string;
  /** Null: SQLite. */
  readonly databaseUrl: string | null;
}

/** The house in a process of its own; with a profile, it writes down where its time went when it stops. */
export class WeightsServer {
  readonly port = port;
  readonly address = `http://127.0.0.1:${port}`;
  private readonly agent = new Agent({ keepAlive: true, maxSockets: 2 });

  private constructor(
    private readonly child: ChildProcess,
    private readonly profiles: string | null,
  ) {}

  static async start({ dataFolder, databaseUrl }: BenchPlace, isProfiled: boolean): Promise<WeightsServer> {
    const main = fileURLToPath(new URL('../../src/main.js', import.meta.url));
    const profiles = isProfiled ? join(dataFolder, 'profiles') : null;
    if (profiles !== null) mkdirSync(profiles, { recursive: true });
    const { environment, flags } = startCommand();
    const options = [...flags];
    if (profiles !== null) options.push('--cpu-prof', `--cpu-prof-dir=${profiles}`);
    const settings = {
      DATA_FOLDER: dataFolder,
      ...(databaseUrl === null ? {} : { DATABASE_URL: databaseUrl }),
      LOG_LEVEL: 'error',
      REQUESTS_PER_MINUTE: '1000000',
      PORT: String(port),
    };
    const child = spawn(process.execPath, [...options, main], {
      env: { ...process.env, ...environment, ...settings },
      stdio: 'inherit',
    });
    for (let tried = 0; tried < 600; tried += 1) {
      const isUp = await fetch(`http://127.0.0.1:${port}/readyz`).then(
        ({ ok }) => ok,
        () => false,
      );
      if (isUp) return new WeightsServer(child, profiles);
      await pause(100);
    }
    throw new Error('the server did not start');
  }

  /** @throws {Error} where it is not taken whole */
  send({ token, body, lineCount }: ReadyBatch, type: 'ndjson' | 'csv'): Promise<void> {
    const contentType = type === 'csv' ? 'text/csv' : 'application/x-ndjson';
    const headers = { authorization: `Bearer ${token}`, 'content-type': contentType, 'content-length': body.length };
    const series = type === 'csv' ? 'csv' : 'json';
    const options = { port, method: 'POST', path: `/api/fill-weights?series=${series}`, headers, agent: this.agent };
    return new Promise((resolve, reject) => {
      const sent = request(options, (answer) => {
        const parts: Buffer[] = [];
        answer.on('data', (part: Buffer) => parts.push(part));
        answer.on('end', () => {
          const text = Buffer.concat(parts).toString();
          const { acceptedCount } = JSON.parse(text) as { acceptedCount?: number };
          if (acceptedCount === lineCount) resolve();
          else reject(new Error(text));
        });
      });
      sent.on('error', reject);
      sent.end(body);
    });
  }

  /** Milliseconds until a page was there. @throws {Error} where it is not shown */
  async page(path: string, cookie: string): Promise<number> {
    const begun = performance.now();
    const answer = await fetch(`${this.address}${path}`, { headers: { cookie } });
    const text = await answer.text();
    if (!answer.ok) throw new Error(`${path}: ${answer.status} ${text.slice(0, 300)}`);
    return performance.now() - begun;
  }

  /** Seconds of processor that it has used so far. */
  cpuSeconds(): number {
    const fields =
      readFileSync(`/proc/${this.child.pid ?? 0}/stat`, 'utf8')
        .split(') ')[1]
        ?.split(' ') ?? [];
    return (Number(fields[11]) + Number(fields[12])) / ticksPerSecond;
  }

  residentMegabytes(): number {
    const status = readFileSync(`/proc/${this.child.pid ?? 0}/status`, 'utf8');
    return Math.round(Number(/VmRSS:\s+(\d+)/.exec(status)?.[1]) / 1024);
  }

  /** Stops it; answers the profile that it wrote. */
  async stop(): Promise<string | null> {
    this.agent.destroy();
    this.child.kill('SIGTERM');
    await once(this.child, 'exit');
    const [file] = this.profiles === null ? [] : readdirSync(this.profiles);
    return this.profiles === null || file === undefined ? null : readFileSync(join(this.profiles, file), 'utf8');
  }
}
