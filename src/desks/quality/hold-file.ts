import { Injectable } from '@nestjs/common';
import { findHold, type HoldLine } from '../../disposition/holds.js';
import { lastSequenceOf } from '../../journal/stale-page.js';
import { ProveAgain, type ProofWay } from '../../people/prove-again.js';
import type { Actor } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { HeavyReads } from '../../platform/database/heavy-reads.js';
import { previewHold, type HoldPreview } from './hold-new.js';

/** All that is shown of a hold. */
export interface HoldFile {
  readonly hold: HoldLine;
  /** Null once it is lifted. */
  readonly preview: HoldPreview | null;
  readonly sequence: number;
  /** What who lifts it is asked for, here. */
  readonly way: ProofWay;
}

@Injectable()
export class HoldFiles {
  constructor(
    private readonly heavy: HeavyReads,
    private readonly clock: Clock,
    private readonly proveAgain: ProveAgain,
  ) {}

  /** A hold with what it reaches now. @throws {NotFound} `hold` */
  async read(actor: Actor, holdId: string): Promise<HoldFile> {
    const now = this.clock.now();
    const read = await this.heavy.snapshot(async (from) => {
      const hold = await findHold(from, actor.siteId, holdId);
      const { scopeKind, scopeId, fromCount, toCount, liftedAt } = hold;
      const subject = { kind: scopeKind, id: scopeId, fromCount, toCount };
      const preview = liftedAt === null ? await previewHold(from, actor.siteId, subject, now) : null;
      return { hold, preview, sequence: await lastSequenceOf(from, { kind: 'hold', id: hold.id }) };
    });
    return { ...read, way: await this.proveAgain.wayOf(actor) };
  }
}
