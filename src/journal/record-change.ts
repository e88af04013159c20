import { Injectable } from '@nestjs/common';
import { canonicalText, sha256, type Canonical } from '../platform/canonical-text.js';
import { Clock, shifted } from '../platform/clock.js';
import { isLockTimeout, isTakenKey } from '../platform/database/constraint-errors.js';
import { UnitOfWork, type Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { JobRunner } from '../platform/jobs/job-runner.js';
import { Refusal } from '../platform/refusal.js';
import { addHappening } from './add-happening.js';
import { appendEntry } from './append-entry.js';
import type { Asked, Change, EntryDraft, Rehearsal } from './entry-draft.js';
import { IdempotencyKey } from './idempotency-key.entity.js';
import { JournalNews } from './journal-news.js';
import { refuseStalePage } from './stale-page.js';

/** What a command does in its unit: it answers, and says what the journal is to hold. */
export type Work<Answer> = (tx: Tx, change: Change) => Promise<{ readonly answer: Answer; readonly entry: EntryDraft }>;

/** Looks, while a change's unit is open, whether it does what was shown of it. */
type StillAsShown = (tx: Tx, entry: EntryDraft, asked: Asked) => Promise<boolean>;

const patienceMilliseconds = 5000;

/**
 * The one door for changes. Takes its turn, begins, looks the key up, runs the command, stores the answer, appends
 * the journal, commits. Done means on disk.
 */
@Injectable()
export class RecordChange {
  private readonly underWay = new Map<string, Promise<unknown>>();
  private isAsShown: StillAsShown | null = null;

  constructor(
    private readonly units: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: Ids,
    private readonly jobs: JobRunner,
    private readonly news: JournalNews,
  ) {}

  /** Sets how a change that was shown beforehand is known to do still what was shown. */
  refuseStaleBy(isAsShown: StillAsShown): void {
    this.isAsShown = isAsShown;
  }

  /**
   * @param content what was sent, without the key: the same key with other content is refused
   * @throws {Refusal} `key-used-for-other-content`, `still-being-recorded`, `page-is-stale`,
   * `preview-is-stale`, `paper-row-keyed`, and what the command refuses
   */
  async run<Answer>(asked: Asked, content: object, work: Work<Answer>): Promise<Answer> {
    if (asked.rehearsal) return this.rehearse(asked, asked.rehearsal, work);
    const answer = await (asked.key === null
      ? this.unit(asked, null, work)
      : this.once(asked, asked.key, contentHash(content), work));
    this.jobs.wake();
    this.news.wake();
    return answer;
  }

  /**
   * The answer that the same key got before; null: none. For what is costly to look at before it is known to come again.
   *
   * @throws {Refusal} `key-used-for-other-content`
   */
  async answered<Answer>(asked: Asked, content: object): Promise<Answer | null> {
    if (asked.key === null) return null;
    const used = { key: asked.key, hash: contentHash(content) };
    const answer = await this.units.run((tx) => findAnswer(tx, asked, used));
    return answer === null ? null : (JSON.parse(answer) as Answer);
  }

  /** The same guards and the same work, and then nothing of it stays. */
  private rehearse<Answer>(asked: Asked, look: Rehearsal, work: Work<Answer>): Promise<Answer> {
    return this.units.rehearse(async (tx) => {
      if (asked.seen) await refuseStalePage(tx, asked.seen);
      const { answer, entry } = await work(tx, { entryId: this.ids.next(), recordedAt: this.clock.now() });
      await look(tx, entry);
      return answer;
    });
  }

  /** A second request with the same key waits for the first, so that it finds the first one's answer. */
  private async once<Answer>(asked: Asked, key: string, hash: string, work: Work<Answer>): Promise<Answer> {
    const name = `${holderOf(asked)} ${asked.route} ${key}`;
    const first = this.underWay.get(name);
    if (first !== undefined) await patiently(first);
    const mine = this.unit(asked, { key, hash }, work);
    const settled = mine.catch(() => undefined);
    this.underWay.set(name, settled);
    try {
      return await mine;
    } catch (error) {
      if (isLockTimeout(error)) throw new Refusal('still-being-recorded');
      throw error;
    } finally {
      if (this.underWay.get(name) === settled) this.underWay.delete(name);
    }
  }

  private unit<Answer>(asked: Asked, used: UsedKey | null, work: Work<Answer>): Promise<Answer> {
    return this.units.run(async (tx) => {
      const earlier = used === null ? null : await findAnswer(tx, asked, used);
      if (earlier !== null) return JSON.parse(earlier) as Answer;
      if (asked.seen) await refuseStalePage(tx, asked.seen);
      const change = { entryId: this.ids.next(), recordedAt: this.clock.now() };
      const { answer, entry } = await work(tx, change);
      await this.refuseOtherThanShown(tx, asked, entry);
      if (used !== null) await useUp(tx, asked, used, { answer, at: change.recordedAt });
      await addHappening(tx, asked, change, entry.action);
      await appendEntry(tx, asked, change, entry);
      return answer;
    });
  }

  /** @throws {Refusal} `preview-is-stale` */
  private async refuseOtherThanShown(tx: Tx, asked: Asked, entry: EntryDraft): Promise<void> {
    if (!asked.previewed || this.isAsShown === null) return;
    if (!(await this.isAsShown(tx, entry, asked))) throw new Refusal('preview-is-stale');
  }

  /** Drops keys that are older than `days`: a job of the house, since they are not facts. */
  async forgetKeys(days: number): Promise<void> {
    const before = shifted(this.clock.now(), -days * 86_400_000);
    await this.units.run(async (tx) => {
      await tx.sql`DELETE FROM "idempotency_key" WHERE "used_at" < ${before}`;
    });
  }
}

interface UsedKey {
  readonly key: string;
  readonly hash: string;
}

/** Form classes carry fractions nowhere, so what was sent has one canonical text. */
function contentHash(content: object): string {
  return sha256(canonicalText(JSON.parse(JSON.stringify(content)) as Canonical));
}

function holderOf(asked: Asked): string {
  return asked.actor.deviceId ?? asked.actor.personId ?? 'house';
}

async function patiently(first: Promise<unknown>): Promise<void> {
  let timer: NodeJS.Timeout | undefined;
  const tooLong = new Promise<never>((_, reject) => {
    timer = setTimeout(() => {
      reject(new Refusal('still-being-recorded'));
    }, patienceMilliseconds);
  });
  await Promise.race([first, tooLong]).finally(() => {
    clearTimeout(timer);
  });
}

async function findAnswer(tx: Tx, asked: Asked, used: UsedKey): Promise<string | null> {
  const row = await tx.findOne(IdempotencyKey, { holder: holderOf(asked), route: asked.route, key: used.key });
  if (row === null) return null;
  if (row.contentHash !== used.hash) throw new Refusal('key-used-for-other-content');
  return row.answer;
}

async function useUp(tx: Tx, asked: Asked, used: UsedKey, done: { answer: unknown; at: string }): Promise<void> {
  try {
    await tx.insert(IdempotencyKey, {
      holder: holderOf(asked),
      route: asked.route,
      key: used.key,
      contentHash: used.hash,
      answer: JSON.stringify(done.answer ?? null),
      usedAt: done.at,
    });
  } catch (error) {
    // Another server process recorded the same key between our look and now: its answer will be found next time.
    if (isTakenKey(error)) throw new Refusal('still-being-recorded');
    throw error;
  }
}
