import { Injectable } from '@nestjs/common';
import { makeDocumentNumber } from '../core/identifiers/document-number.js';
import { localMomentAt } from '../core/shift-calendar/local-time.js';
import type { Asked, Change } from '../journal/entry-draft.js';
import { journalHeadOf } from '../journal/journal-entries.js';
import { RecordChange } from '../journal/record-change.js';
import { raisePoint } from '../open-points/raise-point.js';
import { siteOf } from '../plant/plant-facts.js';
import { sha256 } from '../platform/canonical-text.js';
import type { Instant } from '../platform/clock.js';
import { takeNumber } from '../platform/database/number-series.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { kilogramsText } from '../core/units/grams.js';
import { accountPrefix, overlappingAccount } from './accounts.js';
import { Account } from './account.entity.js';
import type { SignAccountForm } from './account.form.js';
import { settleSpan } from './account-span.js';
import { textOfAccount } from './account-text.js';
import type { AccountSpan, AccountView } from './account-view.js';
import { draftAccount } from './draft-account.js';

export interface SignedAnswer {
  readonly id: string;
  readonly number: string;
  readonly fromAt: Instant;
  readonly untilAt: Instant;
  readonly verdict: AccountView['verdict'];
  readonly inGrams: number;
  readonly outGrams: number;
  readonly differenceGrams: number | null;
  readonly journalHead: string;
}

/** The hash that stands for a chain without an entry. */
const noHead = '0'.repeat(64);

/** Verdicts that somebody beside the lead must look at. */
const pointed: readonly string[] = ['does-not-close', 'exactly-zero'];

/**
 * The account of a hopper over a time is signed as it stands, and closed against change.
 * Refusals: `account-time-not-over`, `account-overlaps`, `account-changed-since-seen`, `bag-still-hanging`,
 * `account-needs-explanation`, `run-still-open`.
 */
@Injectable()
export class SignAccount {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  execute(asked: Asked, form: SignAccountForm): Promise<SignedAnswer> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { siteId } = asked.actor;
      const span = await settleSpan(tx, siteId, form, change.recordedAt);
      if (span.untilAt > change.recordedAt) throw new Refusal('account-time-not-over', { untilAt: span.untilAt });
      // The number is taken first: a second signing waits here for the first and then sees its account.
      const number = await takeAccountNumber(tx, siteId, change.recordedAt);
      await refuseOverlap(tx, span);
      const account = await draftAccount(tx, siteId, span);
      refuseUnready(account, form);
      const { id, journalHead } = await this.freeze(tx, { asked, change, number, account, form });
      if (pointed.includes(account.verdict)) await this.point(tx, siteId, { id, number, account }, change.recordedAt);
      const { inGrams, outGrams, differenceGrams, standardUncertaintyGrams, verdict } = account;
      const figures = { inGrams, outGrams, differenceGrams, verdict };
      const time = { fromAt: span.fromAt, untilAt: span.untilAt };
      return {
        answer: { id, number, ...time, ...figures, journalHead },
        entry: {
          action: 'sign-account',
          subject: { kind: 'account', id },
          touches: [{ kind: 'hopper', id: span.hopperId }],
          after: {
            number,
            hopperId: span.hopperId,
            ...time,
            ...figures,
            standardUncertaintyGrams,
            contentHash: sha256(textOfAccount(account)),
            journalHead,
          },
          reason: form.statedLoss ?? null,
        },
      };
    });
  }

  private async freeze(tx: Tx, signing: Signing): Promise<{ id: string; journalHead: string }> {
    const { asked, change, number, account, form } = signing;
    const id = this.ids.next();
    const journalHead = (await journalHeadOf(tx, asked.actor.siteId)) ?? noHead;
    await tx.insert(Account, {
      id,
      siteId: asked.actor.siteId,
      number,
      hopperId: account.hopperId,
      fromAt: account.fromAt,
      untilAt: account.untilAt,
      lines: textOfAccount(account),
      inGrams: account.inGrams,
      outGrams: account.outGrams,
      differenceGrams: account.differenceGrams,
      standardUncertaintyGrams: account.standardUncertaintyGrams,
      verdict: account.verdict,
      statedLoss: form.statedLoss ?? null,
      journalHead,
      signedBy: asked.actor.personId,
      signedAt: change.recordedAt,
    });
    return { id, journalHead };
  }

  private async point(
    tx: Tx,
    siteId: string,
    { id, number, account }: { id: string; number: string; account: AccountView },
    at: Instant,
  ): Promise<void> {
    await raisePoint(tx, {
      id: this.ids.next(),
      siteId,
      cause: causeOf(account.verdict),
      facts: {
        account: number,
        hopper: account.hopperCode,
        kilograms: kilogramsText(account.differenceGrams ?? 0),
        uncertaintyKilograms: kilogramsText(account.standardUncertaintyGrams ?? 0),
      },
      subject: { kind: 'account', id },
      role: 'plant-manager',
      at,
    });
  }
}

interface Signing {
  readonly asked: Asked;
  readonly change: Change;
  readonly number: string;
  readonly account: AccountView;
  readonly form: SignAccountForm;
}

/** The open point that a verdict calls for. */
export function causeOf(verdict: AccountView['verdict']): string {
  return verdict === 'exactly-zero' ? 'account-exactly-zero' : 'account-does-not-close';
}

async function takeAccountNumber(tx: Tx, siteId: string, at: Instant): Promise<string> {
  const { timeZone } = await siteOf(tx, siteId);
  const year = Number(localMomentAt(timeZone, at).on.slice(0, 4));
  const serial = await takeNumber(tx, siteId, `account-${year}`);
  return makeDocumentNumber({ prefix: accountPrefix, year, serial });
}

async function refuseOverlap(tx: Tx, span: AccountSpan): Promise<void> {
  const other = await overlappingAccount(tx, span);
  if (other === null) return;
  throw new Refusal('account-overlaps', { account: other.number, fromAt: other.fromAt, untilAt: other.untilAt });
}

function refuseUnready(account: AccountView, form: SignAccountForm): void {
  const seenHash = form.seenHash ?? null;
  if (seenHash !== null && seenHash !== sha256(textOfAccount(account))) {
    throw new Refusal('account-changed-since-seen', { hopper: account.hopperCode });
  }
  if (account.hangingBags.length > 0) {
    throw new Refusal('bag-still-hanging', { bag: account.hangingBags.join(', ') });
  }
  if (account.verdict === 'does-not-close' && (form.statedLoss ?? null) === null) {
    throw new Refusal('account-needs-explanation', { kilograms: kilogramsText(account.differenceGrams ?? 0) });
  }
}
