import { Injectable } from '@nestjs/common';
import { findHold, type HoldLine } from '../../disposition/holds.js';
import { narrowingsOf } from '../../disposition/narrowings.js';
import { openHolds, type HoldRow } from '../../disposition/standings.js';
import { lastSequenceOf } from '../../journal/stale-page.js';
import { namesOf } from '../../people/people.js';
import { ProveAgain, type ProofWay } from '../../people/prove-again.js';
import type { Actor } from '../../platform/actor.js';
import { HeavyReads } from '../../platform/database/heavy-reads.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { recallsFrom, type RecallRow } from '../../recalls/recalls.js';
import { scopeOfRow } from '../../tracing/hold-reach.js';
import { previewHold, type HoldPreview } from './hold-new.js';
import { narrowedLines, type NarrowingLine } from './narrowing-lines.js';

/** All that is shown of a hold. */
export interface HoldFile {
  readonly hold: HoldLine;
  /** Null once it is lifted. */
  readonly preview: HoldPreview | null;
  /** What quality took out of it, who, when and why; also once it is lifted. */
  readonly narrowings: readonly NarrowingLine[];
  /** That began with it. */
  readonly recalls: readonly RecallRow[];
  readonly sequence: number;
  /** What who lifts it is asked for, here. */
  readonly way: ProofWay;
}

@Injectable()
export class HoldFiles {
  constructor(
    private readonly heavy: HeavyReads,
    private readonly proveAgain: ProveAgain,
  ) {}

  /** A hold with what it reaches now. @throws {NotFound} `hold` */
  async read(actor: Actor, holdId: string): Promise<HoldFile> {
    const read = await this.heavy.snapshot(async (from) => {
      const hold = await findHold(from, actor.siteId, holdId);
      const preview =
        hold.liftedAt === null ? await previewHold(from, scopeOfRow(hold), await openRow(from, hold)) : null;
      const narrowings = await narrowingsOf(from, [hold.id]);
      const names = await namesOf(
        from,
        narrowings.flatMap(({ personId }) => personId ?? []),
      );
      return {
        hold,
        preview,
        narrowings: await narrowedLines(from, narrowings, names),
        recalls: await recallsFrom(from, actor.siteId, { kind: 'hold', id: hold.id }),
        sequence: await lastSequenceOf(from, { kind: 'hold', id: hold.id }),
      };
    });
    return { ...read, way: await this.proveAgain.wayOf(actor) };
  }
}

async function openRow(from: ReadFrom, { id, scopeKind, scopeId }: HoldLine): Promise<HoldRow | null> {
  const holds = await openHolds(from, [{ kind: scopeKind, id: scopeId }]);
  return holds.find((hold) => hold.id === id) ?? null;
}
