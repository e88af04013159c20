import { Controller, Get, Inject, Param, ParseUUIDPipe, Post, Query, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import type { VNode } from 'preact';
import { Decide } from '../../disposition/decide.js';
import type { Asked } from '../../journal/entry-draft.js';
import { findLots } from '../../packing/packing-runs.js';
import { May } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { HeavyReads } from '../../platform/database/heavy-reads.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { NotFound } from '../../platform/refusal.js';
import { TextField } from '../../platform/web/fields.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { DecisionOnOneForm } from './decision-on-one.form.js';
import { fileTrouble, type FileTrouble } from './file-trouble.js';
import { readLotFile } from './lot-file.js';
import { lotFilePage } from './lot-file.page.js';
import { lotChoicePage } from './lot-choice.page.js';
import { readPalletFile } from './pallet-file.js';
import { palletFilePage } from './pallet-file.page.js';

export class LotQuery {
  @TextField({ most: 80, says: 'The code on the packs' })
  code!: string;
}

type Answer = Promise<VNode | TakenForScript | null>;

@ApiExcludeController()
@Controller('quality')
export class UnitDecisionController {
  constructor(
    private readonly decide: Decide,
    private readonly heavy: HeavyReads,
    private readonly clock: Clock,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Get('lots')
  @May('read')
  async find(
    @Looking() viewer: Viewer,
    @Query() { code }: LotQuery,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<VNode | null> {
    const lots = await findLots(this.reader, viewer.actor.siteId, code, { prefix: true });
    const [only] = lots;
    if (only === undefined) throw new NotFound('lot', code);
    if (lots.length > 1) return lotChoicePage({ viewer, code, lots });
    void reply.status(303).header('Location', `/quality/lots/${only.id}`);
    return null;
  }

  @Get('lots/:id')
  @May('read')
  lot(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.lotFile(viewer, id, null);
  }

  @Post('lots/:id/decision')
  @May('decide')
  decideOnLot(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Answer {
    return sent.take({
      form: DecisionOnOneForm,
      timeZone: viewer.timeZone,
      act: (form) => this.decide.execute(asked, { ...form, kind: 'lot', subject: id }),
      next: () => `/quality/lots/${id}`,
      says: ({ verdict }) => ({ code: `said-${verdict}`, facts: {} }),
      again: async (trouble) => this.lotFile(viewer, id, await fileTrouble(this.reader, viewer, 'decision', trouble)),
    });
  }

  @Get('pallets/:id')
  @May('read')
  pallet(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.palletFile(viewer, id, null);
  }

  @Post('pallets/:id/decision')
  @May('decide')
  decideOnPallet(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Answer {
    return sent.take({
      form: DecisionOnOneForm,
      timeZone: viewer.timeZone,
      act: (form) => this.decide.execute(asked, { ...form, kind: 'pallet', subject: id }),
      next: () => `/quality/pallets/${id}`,
      says: ({ verdict }) => ({ code: `said-${verdict}`, facts: {} }),
      again: async (trouble) =>
        this.palletFile(viewer, id, await fileTrouble(this.reader, viewer, 'decision', trouble)),
    });
  }

  private async lotFile(viewer: Viewer, id: string, trouble: FileTrouble | null): Promise<VNode> {
    const now = this.clock.now();
    const file = await this.heavy.snapshot((from) => readLotFile(from, viewer.actor, id.toLowerCase(), now));
    return lotFilePage({ viewer, file, trouble });
  }

  private async palletFile(viewer: Viewer, id: string, trouble: FileTrouble | null): Promise<VNode> {
    const file = await this.heavy.snapshot((from) => readPalletFile(from, viewer.actor, id));
    return palletFilePage({ viewer, file, trouble });
  }
}
