import { Controller, Get, Inject, ServiceUnavailableException } from '@nestjs/common';
import { AnyoneMay } from '../actor.js';
import { DATABASES, type Databases } from '../database/databases.js';

/** For the machine that watches the server: alive, and ready to work. */
@Controller()
export class HealthController {
  constructor(@Inject(DATABASES) private readonly databases: Databases) {}

  @Get('healthz')
  @AnyoneMay()
  healthy(): { status: string } {
    return { status: 'alive' };
  }

  @Get('readyz')
  @AnyoneMay()
  async ready(): Promise<{ status: string; database: string }> {
    try {
      await this.databases.reader.sql`SELECT 1 AS "one"`;
      return { status: 'ready', database: this.databases.kind };
    } catch {
      throw new ServiceUnavailableException();
    }
  }
}
