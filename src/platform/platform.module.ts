import { Global, Module, type DynamicModule } from '@nestjs/common';
import { Clock } from './clock.js';
import { CONFIG, type Config } from './config.js';
import { HeavyReads } from './database/heavy-reads.js';
import { READER } from './database/reading.js';
import { readingFrom } from './database/statement.js';
import { UnitOfWork } from './database/unit-of-work.js';
import { DATABASES, type Databases } from './database/databases.js';
import { Ids } from './ids.js';
import { JobRunner } from './jobs/job-runner.js';
import { PaperRenderers } from './printing/paper-renderers.js';
import { Papers } from './printing/papers.js';
import { PaperApi } from './printing/paper.api.js';
import { HealthController } from './web/health.controller.js';
import { AssetsController } from './web/assets.controller.js';

/** What the house stands on, given from outside: the demo and the tests bring their own clock and ids. */
export interface Ground {
  readonly config: Config;
  readonly databases: Databases;
  readonly clock: Clock;
  readonly ids: Ids;
}

@Global()
@Module({})
export class PlatformModule {
  static on(ground: Ground): DynamicModule {
    const providers = [
      { provide: CONFIG, useValue: ground.config },
      { provide: DATABASES, useValue: ground.databases },
      { provide: READER, useValue: readingFrom(ground.databases.reader) },
      { provide: Clock, useValue: ground.clock },
      { provide: Ids, useValue: ground.ids },
      { provide: UnitOfWork, useValue: new UnitOfWork(ground.databases) },
      { provide: HeavyReads, useValue: new HeavyReads(ground.databases) },
      JobRunner,
      PaperRenderers,
      Papers,
    ];
    return {
      module: PlatformModule,
      controllers: [HealthController, AssetsController, PaperApi],
      providers,
      exports: providers,
    };
  }
}
