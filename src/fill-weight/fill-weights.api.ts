import { Controller, Inject, Post, Query } from '@nestjs/common';
import { ApiBody, ApiConsumes, ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { Asked } from '../journal/entry-draft.js';
import { May } from '../platform/actor.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { Refusal } from '../platform/refusal.js';
import { fieldOf } from '../platform/web/problem.filter.js';
import { Trying } from '../platform/web/request.js';
import { Streaming, Streams, type StreamedBody } from '../platform/web/streamed-body.js';
import { FillWeightsQuery } from './fill-weights.form.js';
import { BatchesInHand } from './incoming/batches-in-hand.js';
import { ReadWeights } from './incoming/read-weights.js';
import { refuseUnfinished } from './incoming/refuse-unfinished.js';
import { packWeigherOfDevice } from './pack-weighers.js';
import { ReceiveWeights } from './receive-weights.js';

/** Unpacked; a million lines of the usual shape are 130 MB. */
const mostBytes = 268_435_456;

async function readWhole(read: ReadWeights, body: StreamedBody, query: FillWeightsQuery): Promise<ReadWeights> {
  const stop = (await body.read(mostBytes, (chunk) => read.take(chunk))) ?? read.end();
  refuseUnfinished(read, stop, query);
  return read;
}

const example = { lineCount: 500, acceptedCount: 480, repeatedCount: 20, refusedCount: 0, problems: [] };

@ApiTags('fill weights')
@Controller('api/fill-weights')
export class FillWeightsApi {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly receiveWeights: ReceiveWeights,
    private readonly inHand: BatchesInHand,
  ) {}

  @Post()
  @May('send-fill-weights')
  @Streams()
  @ApiOperation({
    summary:
      'Send weights of packs as lines of JSON or CSV: sequence, at, netGrams or netMilligrams, and head, rejected, line, run. What was sent before counts once, so it takes no key',
  })
  @ApiConsumes('application/x-ndjson', 'text/csv')
  @ApiBody({ schema: { type: 'string' } })
  @ApiCreatedResponse({ schema: { example } })
  async send(@Trying() asked: Asked, @Streaming() body: StreamedBody, @Query() query: FillWeightsQuery) {
    const weigher = await packWeigherOfDevice(this.reader, asked.actor.deviceId ?? '');
    if (weigher === null) throw new Refusal('machine-weighs-nothing');
    const answer = await this.inHand.run(async () => {
      const read = new ReadWeights({ kind: body.type === 'text/csv' ? 'csv' : 'ndjson' });
      const answered = await this.receiveWeights.execute(asked, {
        weigher,
        read: await readWhole(read, body, query),
        series: query.series ?? '1',
        run: query.run ?? null,
        line: query.line ?? null,
        skipsFaults: query.lines === 'skip',
      });
      read.done();
      return answered;
    });
    return { ...answer, problems: answer.problems.map(fieldOf) };
  }
}
