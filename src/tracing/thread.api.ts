import { Controller, Get, Inject, Param } from '@nestjs/common';
import { ApiOperation, ApiParam, ApiTags } from '@nestjs/swagger';
import { May, type Actor } from '../platform/actor.js';
import { Clock } from '../platform/clock.js';
import { HeavyReads } from '../platform/database/heavy-reads.js';
import { isId } from '../platform/is-id.js';
import { NotFound } from '../platform/refusal.js';
import { Acting } from '../platform/web/request.js';
import { readThread } from './read-thread.js';
import { subjectOfSite } from './subject-by-id.js';
import { threadKinds, type Thread, type ThreadKind } from './thread.js';

@ApiTags('thread')
@Controller('api/threads')
export class ThreadApi {
  constructor(
    @Inject(HeavyReads) private readonly heavy: HeavyReads,
    private readonly clock: Clock,
  ) {}

  @Get(':kind/:id')
  @May('read')
  @ApiParam({ name: 'kind', enum: [...threadKinds] })
  @ApiOperation({ summary: 'The thread of a thing by its id: sources, results, pallets, customers' })
  async thread(@Acting() actor: Actor, @Param('kind') kind: string, @Param('id') id: string): Promise<Thread> {
    const known = threadKinds.find((one) => one === kind);
    if (known === undefined) throw new NotFound('thread-kind', kind);
    if (!isName(known, id)) throw new NotFound(known, id);
    return this.heavy.snapshot(async (from) =>
      readThread(from, actor.siteId, await subjectOfSite(from, actor.siteId, known, id), this.clock.now()),
    );
  }
}

/** Things are known by their ids; a liner lot by what stands on it. */
function isName(kind: ThreadKind, id: string): boolean {
  return kind === 'liner-lot' ? /^[^\p{C}]{1,80}$/u.test(id) : isId(id);
}
