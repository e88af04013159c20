import { Injectable } from '@nestjs/common';
import type { ChangeLine } from '../../disposition/changes-to-look-at.js';
import { lastSequenceOf } from '../../journal/stale-page.js';
import { namesOf } from '../../people/people.js';
import { ProveAgain, type ProofWay } from '../../people/prove-again.js';
import type { Actor } from '../../platform/actor.js';
import { siteOf } from '../../plant/plant-facts.js';
import { Clock, type Instant } from '../../platform/clock.js';
import { HeavyReads } from '../../platform/database/heavy-reads.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { figuresOfText, textOfFigures, type FiguresOfText } from '../../recalls/frozen-figures.js';
import { figuresOfRecall } from '../../recalls/recall-figures.js';
import { proposedHolds, type ProposedHold } from '../../recalls/recall-holds.js';
import { linksOfRecall } from '../../recalls/recall-links.js';
import { changesOfRecall, recordsOf, type RecallRecord } from '../../recalls/recall-records.js';
import {
  answersOf,
  findRecall,
  reportOfRecall,
  scopesOf,
  signingOf,
  type RecallAnswerRow,
  type RecallRow,
  type RecallSigningRow,
} from '../../recalls/recalls.js';
import { lineEvents } from '../../tracing/line-events.js';
import { packedParts } from '../../tracing/packed-parts.js';
import type { LineEvent } from '../../tracing/thread.js';
import { subjectTextOf } from '../quality/hold-text.js';
import { namesOfCustomers, type CustomerNames } from './customer-names.js';
import { originOf, type RecallOrigin } from './recall-origin-text.js';
import { namedScopes, type NamedScope } from './scope-key.js';

/** A hold that a recall places or would place, in words. */
export interface NamedHold extends ProposedHold {
  readonly text: string;
}

/** All that is shown of a recall. */
export interface RecallFile {
  readonly recall: RecallRow;
  readonly scopes: readonly NamedScope[];
  /** As signed; as the records stand while it is open. */
  readonly figures: FiguresOfText;
  readonly customerNames: CustomerNames;
  readonly answers: readonly RecallAnswerRow[];
  readonly holds: readonly NamedHold[];
  readonly events: readonly LineEvent[];
  readonly corrections: readonly ChangeLine[];
  readonly records: readonly RecallRecord[];
  readonly origin: RecallOrigin | null;
  readonly names: ReadonlyMap<string, string>;
  readonly signing: RecallSigningRow | null;
  readonly reportId: string | null;
  readonly sequence: number;
  readonly readAt: Instant;
  /** What who signs is asked for, here. */
  readonly way: ProofWay;
}

@Injectable()
export class RecallFiles {
  constructor(
    private readonly heavy: HeavyReads,
    private readonly proveAgain: ProveAgain,
    private readonly clock: Clock,
  ) {}

  /** A recall with all that belongs in its file. @throws {NotFound} `recall` */
  async read(actor: Actor, recallId: string): Promise<RecallFile> {
    const { siteId } = actor;
    const readAt = this.clock.now();
    const read = await this.heavy.snapshot(async (from) => {
      const recall = await findRecall(from, siteId, recallId);
      const signing = await signingOf(from, recall.id);
      const figures = await figuresShown(from, recall, signing);
      const packed = await packedParts(from, siteId, figures.parts);
      const { timeZone } = await siteOf(from, siteId);
      return {
        ...{ recall, signing, figures, readAt },
        scopes: await namedScopes(from, await scopesOf(from, recall.id)),
        customerNames: await namesOfCustomers(from, figures.customers),
        answers: await answersOf(from, recall.id),
        holds: await namedHolds(from, await proposedHolds(from, recall)),
        events: await lineEvents(from, packed),
        corrections: await changesOfRecall(from, siteId, figures),
        records: await recordsOf(from, { siteId, timeZone }, { ...figures, packed }),
        origin: await originOf(from, siteId, recall),
        names: await namesOf(
          from,
          [recall.openedBy, signing?.signedBy ?? null].filter((id) => id !== null),
        ),
        reportId: await reportOfRecall(from, recall.id),
        sequence: await lastSequenceOf(from, { kind: 'recall', id: recall.id }),
      };
    });
    return { ...read, way: await this.proveAgain.wayOf(actor) };
  }
}

/** One way for both: what is open is put into the text that would be signed, and read from it. */
async function figuresShown(
  from: ReadFrom,
  recall: RecallRow,
  signing: RecallSigningRow | null,
): Promise<FiguresOfText> {
  if (signing !== null) return figuresOfText(signing.figures);
  const figures = await figuresOfRecall(from, recall);
  return figuresOfText(textOfFigures(figures, await linksOfRecall(from, figures)));
}

async function namedHolds(from: ReadFrom, holds: readonly ProposedHold[]): Promise<readonly NamedHold[]> {
  const named: NamedHold[] = [];
  for (const hold of holds) named.push({ ...hold, text: await subjectTextOf(from, hold.scope) });
  return named;
}
