import { Injectable } from '@nestjs/common';
import type { LinkComplaintForm } from '../../complaints/complaint.form.js';
import { Clock } from '../../platform/clock.js';
import { HeavyReads } from '../../platform/database/heavy-reads.js';
import { Refusal } from '../../platform/refusal.js';
import type { ThreadSubject } from '../../tracing/thread.js';
import { findAnything, findSubjects, type Findings } from '../find-subjects.js';
import { choiceKey, type Finding } from '../finding.js';

/** Finds what a customer's reading of a code means. It was read by eye, so what looks alike is offered too. */
@Injectable()
export class ReadByCustomer {
  constructor(
    private readonly heavy: HeavyReads,
    private readonly clock: Clock,
  ) {}

  /**
   * The one thing that is meant.
   *
   * @throws {Refusal} `complaint-code-unknown`, `complaint-code-no-time`, `complaint-code-which`
   */
  async linkOf(siteId: string, code: string, meant: string | null): Promise<LinkComplaintForm> {
    const { findings, fault } = await this.find(siteId, code);
    const chosen = findings.filter((finding) => meant === null || choiceKey(finding) === meant);
    const [only] = chosen;
    if (only === undefined) {
      if (fault !== null) throw new Refusal('complaint-code-no-time', { at: fault.facts['at'] ?? '' });
      throw new Refusal('complaint-code-unknown', { code });
    }
    const isPlain = only.tier === 'as-typed' && !only.isDoubtful;
    if (chosen.length > 1 || (meant === null && !isPlain)) throw new Refusal('complaint-code-which', { code });
    return linkOf(only.subject);
  }

  /** What it may mean, to be chosen from. */
  async choices(siteId: string, code: string): Promise<readonly Finding[]> {
    return (await this.find(siteId, code)).findings;
  }

  private find(siteId: string, code: string): Promise<Findings> {
    const asked = { code, localTime: null, now: this.clock.now(), isReadByEye: true };
    return this.heavy.snapshot(async (from) => {
      const found = await findAnything(from, siteId, asked);
      return { ...found, findings: await findSubjects(from, siteId, asked) };
    });
  }
}

function linkOf({ kind, id, localTime, printedAt, codedBetween }: ThreadSubject): LinkComplaintForm {
  return {
    ...{ subjectKind: kind, subjectId: id, localTime, printedAt },
    ...{ codedFromAt: codedBetween?.fromAt ?? null, codedUntilAt: codedBetween?.untilAt ?? null },
  };
}
