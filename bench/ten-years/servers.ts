import { fork, spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { startCommand } from '../start-command.js';
import type { FloorCase } from './floor-server.main.js';

export interface Settings {
  readonly dataFolder: string;
  readonly databaseUrl: string | null;
}

const environmentOf = ({ dataFolder, databaseUrl }: Settings): NodeJS.ProcessEnv => ({
  ...process.env,
  DATA_FOLDER: dataFolder,
  ...(databaseUrl === null ? {} : { DATABASE_URL: databaseUrl }),
});

/**
 * Processor time that a process has taken so far in all its threads, in milliseconds; null where the system does not
 * say. A shared machine stretches what the clock shows, but hardly this.
 */
function cpuMillisecondsOf({ pid }: ChildProcess): number | null {
  try {
    // Behind the name in brackets; user and system time are fields 14 and 15, in hundredths of a second.
    const fields =
      readFileSync(`/proc/${pid ?? 0}/stat`, 'utf8')
        .split(') ')[1]
        ?.split(' ') ?? [];
    return (Number(fields[11]) + Number(fields[12])) * 10;
  } catch {
    return null;
  }
}

/** The house as it is started, in a process of its own. */
export class HouseProcess {
  private mostBytes = 0;
  private readonly watch: NodeJS.Timeout;

  private constructor(
    private readonly child: ChildProcess,
    readonly address: string,
  ) {
    this.watch = setInterval(() => {
      this.mostBytes = Math.max(this.mostBytes, this.residentBytes());
    }, 100);
  }

  static async start(settings: Settings, port: number): Promise<HouseProcess> {
    const limits = { REQUESTS_PER_MINUTE: '1000000', LOG_LEVEL: 'error', PORT: String(port) };
    const { environment, flags, file } = startCommand();
    const env = { ...environmentOf(settings), ...environment, ...limits };
    const child = spawn(process.execPath, [...flags, file], { env, stdio: 'inherit' });
    const address = `http://127.0.0.1:${port}`;
    for (let tried = 0; tried < 600; tried += 1) {
      const isUp = await fetch(`${address}/sign-in`).then(
        ({ ok }) => ok,
        () => false,
      );
      if (isUp) return new HouseProcess(child, address);
      await pause(100);
    }
    throw new Error('the server did not start');
  }

  cpuMilliseconds(): number | null {
    return cpuMillisecondsOf(this.child);
  }

  /** The most memory that was resident since the start, in megabytes. */
  mostMegabytes(): number {
    return this.mostBytes / 1e6;
  }

  async stop(): Promise<void> {
    clearInterval(this.watch);
    this.child.kill('SIGTERM');
    await once(this.child, 'exit');
  }

  private residentBytes(): number {
    try {
      const status = readFileSync(`/proc/${this.child.pid ?? 0}/status`, 'utf8');
      return Number(/VmRSS:\s+(\d+)/.exec(status)?.[1] ?? 0) * 1024;
    } catch {
      return 0;
    }
  }
}

/** The floor in a process of its own. */
export class FloorProcess {
  private constructor(
    private readonly child: ChildProcess,
    private readonly address: string,
  ) {}

  static async start(settings: Settings): Promise<FloorProcess> {
    const file = fileURLToPath(new URL('./floor-server.main.js', import.meta.url));
    const child = fork(file, { env: environmentOf(settings), serialization: 'advanced' });
    const [address] = (await once(child, 'message')) as [string];
    return new FloorProcess(child, address);
  }

  cpuMilliseconds(): number | null {
    return cpuMillisecondsOf(this.child);
  }

  /** Where the floor answers this case. */
  async addressOf(told: FloorCase): Promise<string> {
    this.child.send(told);
    const [place] = (await once(this.child, 'message')) as [number];
    return `${this.address}/${place}`;
  }

  async stop(): Promise<void> {
    this.child.kill('SIGTERM');
    await once(this.child, 'exit');
  }
}
