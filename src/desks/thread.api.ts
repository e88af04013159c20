import { Controller, Get, Query, Res } from '@nestjs/common';
import { ApiOkResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import { May, type Actor } from '../platform/actor.js';
import { BadForm, NotFound } from '../platform/refusal.js';
import { Acting } from '../platform/web/request.js';
import { sendHeld } from '../platform/web/send-held.js';
import { FindThread, type Found } from './find-thread.js';
import { choiceKey } from './finding.js';
import { ThreadQuery } from './search.form.js';

/** By which an answer shows that it is a thread. */
const threadBegins = Buffer.from('{"thread":');

const bagId = '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10';
const weighedExample = (packCount: number, meanMilligrams: number) => ({
  ...{ fromAt: '2026-03-12T13:31:00.000Z', untilAt: '2026-03-12T13:31:59.000Z', packCount, meanMilligrams },
  ...{ smallestMilligrams: 991_400, beyondT1Count: 0, rejectedPackCount: 0, isWhole: true },
});
const threadExample = {
  thread: { subject: { kind: 'lot', name: 'L6071A2' }, sources: [], pallets: [] },
  fits: [],
  ribbons: [
    {
      hopperCode: 'H1',
      windows: [{ fromGrams: 2_400_000, toGrams: 3_400_000 }],
      bags: [
        {
          ...{ bagId, name: '60312-07K', spans: [{ fromGrams: 2_000_000, toGrams: 3_000_000 }] },
          ...{ leastGrams: 310_000, likelyGrams: 600_000, mostGrams: 1_000_000, word: 'sure' },
        },
      ],
    },
  ],
  dossier: {
    near: [
      {
        ...{ kind: 'check', at: '2026-03-12T13:30:00.000Z', lineCode: 'L1', says: 'Weigher', passed: false },
        href: `/checks/${bagId}`,
      },
    ],
    weights: [
      {
        ...{ runId: bagId, runNumber: 'PR-2026-000042', lineCode: 'L1', weigherId: bagId, weigherCode: 'W1' },
        ...{ nominalMilligrams: 1_000_000, t1Milligrams: 985_000 },
        packs: weighedExample(42, 1_003_200),
        around: weighedExample(2_480, 1_002_900),
        run: weighedExample(18_240, 1_003_000),
        nearest: [{ at: '2026-03-12T13:31:02.410Z', netMilligrams: 1_004_600, head: 7, isRejected: false }],
      },
    ],
    changes: [],
    sisters: [{ word: 'likely', palletCount: 4, packCount: 1920 }],
  },
};

@ApiTags('thread')
@Controller('api/thread')
export class CodeThreadApi {
  constructor(private readonly threads: FindThread) {}

  @Get()
  @May('read')
  @ApiOperation({
    summary: 'The thread of whatever carries this code; where it fits several things, the choices',
    description:
      'Takes a pack code with or without its time, a bag number, an SSCC, a GS1 element string, a Digital Link, a delivery note number, a customer’s order, a complaint, a recall, a film or liner lot, a run. Choices say why they fit. With `isDrawn` also `ribbons`, the figures that the picture of each hopper period is drawn from (grams on the axes of what went in and what came out; least, likely and most of each bag), and `dossier`: stops and checks near the packs, what weighers weighed in their minutes and around them, corrections and late entries that touch them, and packs with the same sugar; none of what was never packed.',
  })
  @ApiOkResponse({ schema: { example: threadExample } })
  async thread(
    @Acting() actor: Actor,
    @Query() query: ThreadQuery,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<object> {
    const { code, at: localTime = null, meant = null, isDrawn } = query;
    const asked = { code, localTime, meant, isDrawn: isDrawn === true };
    const held = await this.threads.findHeld(actor.siteId, asked);
    // A thread may be half a megabyte: it goes on as it came.
    if (held.bytes.subarray(0, threadBegins.length).equals(threadBegins)) return sendHeld(reply, held);
    const text = held.bytes.toString();
    held.giveBack();
    const found = JSON.parse(text) as Exclude<Found, { readonly thread: unknown }>;
    if ('complaint' in found) {
      const { complaint } = found;
      return { complaint, thread: await this.threads.ofComplaint(actor.siteId, complaint) };
    }
    if ('recall' in found) return found;
    const { findings, complaints, recalls, fault } = found.choices;
    if (fault !== null) throw new BadForm([{ field: 'code', ...fault }]);
    if (findings.length + complaints.length + recalls.length === 0) throw new NotFound('code', query.code);
    return {
      choices: findings.map((choice) => ({ ...choice, meant: choiceKey(choice) })),
      complaints: complaints.map((choice) => ({ ...choice, meant: choice.complaint.id })),
      recalls: recalls.map((choice) => ({ ...choice, meant: choice.recall.id })),
    };
  }
}
