import { Inject, Injectable } from '@nestjs/common';
import type { Asked, JournalAction, Subject } from '../../journal/entry-draft.js';
import { RecordChange } from '../../journal/record-change.js';
import { clearPoints, raisePoint } from '../../open-points/raise-point.js';
import { openPointIdOf } from '../../open-points/open-points.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { Ids } from '../../platform/ids.js';
import { BadForm, NotTaken, Refusal, type SentenceFacts } from '../../platform/refusal.js';
import { packWeigherCalled } from '../pack-weighers.js';
import type { RawMessage } from './weight-message.js';

/** What a person is to look at: its cause, what it is about, and what its sentence is filled with. */
interface Trouble {
  readonly siteId: string;
  readonly cause: string;
  readonly subject: Subject;
  readonly facts: SentenceFacts;
  /** What the journal calls the look that found it. */
  readonly action?: JournalAction;
}

const unknownCauses: ReadonlySet<string> = new Set(['mqtt-weigher-unknown', 'mqtt-not-allowed']);

/** Opens points about messages that were not taken, one a cause and weigher: garbage that keeps coming is said once. */
@Injectable()
export class MessagePoints {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  /** A message of a weigher was refused. */
  async refused({ weigher: code, about }: Pick<RawMessage, 'weigher' | 'about'>, error: unknown): Promise<void> {
    const weigher = await packWeigherCalled(this.reader, code);
    const { reason, facts } = reasonOf(error);
    if (weigher === null || unknownCauses.has(reason)) {
      await this.raise({ ...(await this.place(weigher)), cause: reason, facts });
      return;
    }
    const subject = { kind: 'pack-weigher', id: weigher.id };
    const said = { ...facts, weigher: weigher.code, reason };
    const cause = about === 'checks' ? 'check-message-refused' : 'weight-message-refused';
    await this.raise({ siteId: weigher.siteId, cause, subject, facts: said });
  }

  /** A message came that the broker had kept. */
  async kept(code: string): Promise<void> {
    const weigher = await packWeigherCalled(this.reader, code);
    if (weigher === null) return;
    const subject = { kind: 'pack-weigher', id: weigher.id };
    await this.raise({
      siteId: weigher.siteId,
      cause: 'weight-message-kept',
      subject,
      facts: { weigher: weigher.code },
    });
  }

  /** The broker has not been reached for a while, or is there again. */
  async broker(isAway: boolean, facts: SentenceFacts): Promise<void> {
    const place = await this.place(null);
    const trouble: Trouble = { ...place, cause: 'mqtt-broker-away', facts, action: 'look-at-broker' };
    if (isAway) {
      await this.raise(trouble);
      return;
    }
    if ((await openPointIdOf(this.reader, trouble)) === null) return;
    const { siteId, subject, cause } = trouble;
    await this.changes.run(asTheHouse(siteId), {}, async (tx, { recordedAt: at }) => {
      await clearPoints(tx, { nextId: () => this.ids.next(), siteId, cause, subject, personId: null, at });
      return { answer: null, entry: { action: 'look-at-broker', subject, after: { isAway } } };
    });
  }

  private async raise(trouble: Trouble): Promise<void> {
    if ((await openPointIdOf(this.reader, trouble)) !== null) return;
    const { siteId, cause, subject, facts, action = 'refuse-weight-message' } = trouble;
    await this.changes.run(asTheHouse(siteId), {}, async (tx, { recordedAt: at }) => {
      await raisePoint(tx, { id: this.ids.next(), siteId, cause, facts, subject, role: 'plant-manager', at });
      return { answer: null, entry: { action, subject, after: { cause } } };
    });
  }

  private async place(weigher: { readonly id: string; readonly siteId: string } | null) {
    if (weigher !== null) return { siteId: weigher.siteId, subject: { kind: 'pack-weigher', id: weigher.id } };
    const [site] = await this.reader.sql<{ id: string }>`SELECT "id" FROM "site" ORDER BY "id" LIMIT 1`;
    const siteId = site?.id ?? '';
    return { siteId, subject: { kind: 'weight-messages', id: siteId } };
  }
}

/** Why a message was refused: of its lines in error the first. */
function reasonOf(error: unknown): { readonly reason: string; readonly facts: SentenceFacts } {
  if (error instanceof BadForm) {
    const [first] = error.problems;
    return first === undefined
      ? { reason: error.code, facts: error.facts }
      : { reason: first.code, facts: first.facts };
  }
  if (error instanceof Refusal || error instanceof NotTaken) return { reason: error.code, facts: error.facts };
  return { reason: 'server-fault', facts: {} };
}

function asTheHouse(siteId: string): Asked {
  return { actor: { siteId, personId: null, deviceId: null, roles: [] }, route: 'HOUSE', key: null };
}
