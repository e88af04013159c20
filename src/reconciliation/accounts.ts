import type { Verdict } from '../core/mass-balance/account.js';
import { readDocumentNumber, makeDocumentNumber } from '../core/identifiers/document-number.js';
import type { Page } from '../platform/web/listed.js';
import type { Instant } from '../platform/clock.js';
import { toWhole } from '../platform/database/stored-values.js';
import { onlyRow, type ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';
import { changesSince, type AccountChanges } from './account-changes.js';
import { accountOfText } from './account-text.js';
import type { AccountSpan, AccountView } from './account-view.js';
import { draftAccount } from './draft-account.js';
import { linesOnPaper } from './lines-on-paper.js';

/** What the numbers of accounts begin with. */
export const accountPrefix = 'AC';

/** A signed account as lists show it. */
export interface AccountRow {
  readonly id: string;
  readonly siteId: string;
  readonly number: string;
  readonly hopperId: string;
  readonly hopperCode: string;
  readonly fromAt: Instant;
  readonly untilAt: Instant;
  readonly inGrams: number;
  readonly outGrams: number;
  readonly differenceGrams: number | null;
  readonly standardUncertaintyGrams: number | null;
  readonly verdict: Verdict;
  readonly statedLoss: string | null;
  readonly journalHead: string;
  readonly signedBy: string | null;
  readonly signedAt: Instant;
  /** It was declared void; the number is kept. */
  readonly isVoid: boolean;
}

/** A signed account with all its lines. */
export interface SignedAccount extends AccountRow {
  readonly account: AccountView;
}

/** A signed account, and beside it what its records say now. */
export interface AccountWithCorrections extends SignedAccount {
  readonly since: AccountChanges;
  /** Ids of its lines' records that were written on paper and keyed in later. */
  readonly onPaper: readonly string[];
}

type StoredAccount = Omit<AccountRow, 'isVoid'> & { readonly voidedBy: string | null };

const columns = (): string => `
  a."id", a."site_id" AS "siteId", a."number", a."hopper_id" AS "hopperId", h."code" AS "hopperCode",
  a."from_at" AS "fromAt", a."until_at" AS "untilAt", a."in_grams" AS "inGrams",
  a."out_grams" AS "outGrams", a."difference_grams" AS "differenceGrams",
  a."standard_uncertainty_grams" AS "standardUncertaintyGrams", a."verdict", a."stated_loss" AS "statedLoss",
  a."journal_head" AS "journalHead", a."signed_by" AS "signedBy", a."signed_at" AS "signedAt",
  a."voided_by" AS "voidedBy"
  FROM "account" a JOIN "hopper" h ON h."id" = a."hopper_id"`;

/** @throws {NotFound} `account` */
export async function signedAccountOf(from: ReadFrom, siteId: string, accountId: string): Promise<SignedAccount> {
  const [row] = await from.sql<StoredAccount>`
    SELECT ${columns} WHERE a."id" = ${accountId} AND a."site_id" = ${siteId}`;
  const [text] = await from.sql<{ lines: string }>`SELECT "lines" FROM "account" WHERE "id" = ${accountId}`;
  if (row === undefined || text === undefined) throw new NotFound('account', accountId);
  return { ...accountRow(row), account: accountOfText(text.lines) };
}

/** A signed account by its number, however typed. Null: there is none. */
export async function findAccount(from: ReadFrom, siteId: string, text: string): Promise<AccountRow | null> {
  const number = readDocumentNumber(text, accountPrefix);
  if (number === null) return null;
  const rows = await from.sql<StoredAccount>`
    SELECT ${columns} WHERE a."site_id" = ${siteId} AND a."number" = ${makeDocumentNumber(number)}`;
  return rows[0] === undefined ? null : accountRow(rows[0]);
}

/** Accounts of a site, newest first, by key; void ones too, since no number is missing. */
export async function accountPage(from: ReadFrom, siteId: string, page: Page): Promise<readonly AccountRow[]> {
  const rows = await from.sql<StoredAccount>`
    SELECT ${columns} WHERE a."site_id" = ${siteId} AND a."id" < ${page.before ?? '~'}
    ORDER BY a."id" DESC LIMIT ${page.limit}`;
  return rows.map(accountRow);
}

/** The good account of a hopper that has part of this time already; null: none has. */
export async function overlappingAccount(
  from: ReadFrom,
  { hopperId, fromAt, untilAt }: AccountSpan,
): Promise<Pick<AccountRow, 'number' | 'fromAt' | 'untilAt'> | null> {
  return onlyRow(
    await from.sql<Pick<AccountRow, 'number' | 'fromAt' | 'untilAt'>>`
      SELECT "number", "from_at" AS "fromAt", "until_at" AS "untilAt" FROM "account"
      WHERE "hopper_id" = ${hopperId} AND "voided_by" IS NULL AND "from_at" < ${untilAt} AND "until_at" > ${fromAt}
      ORDER BY "from_at" LIMIT 1`,
  );
}

/** The good accounts of a hopper that have part of a time, the oldest first. */
export async function accountsWithin(
  from: ReadFrom,
  { hopperId, fromAt, untilAt }: AccountSpan,
): Promise<AccountRow[]> {
  const rows = await from.sql<StoredAccount>`
    SELECT ${columns} WHERE a."hopper_id" = ${hopperId} AND a."voided_by" IS NULL
      AND a."from_at" < ${untilAt} AND a."until_at" > ${fromAt} ORDER BY a."from_at" LIMIT 50`;
  return rows.map(accountRow);
}

/**
 * A signed account, and the account of the same time as the records stand now: what was corrected or came late since
 * stands beside what was signed.
 *
 * @throws {NotFound} `account`
 */
export async function accountWithCorrections(
  from: ReadFrom,
  siteId: string,
  accountId: string,
): Promise<AccountWithCorrections> {
  const signed = await signedAccountOf(from, siteId, accountId);
  const { account } = signed;
  return {
    ...signed,
    since: changesSince(account, await draftAccount(from, siteId, account)),
    onPaper: await linesOnPaper(from, siteId, account),
  };
}

function accountRow({ voidedBy, ...row }: StoredAccount): AccountRow {
  const whole = (stored: number | null): number | null => (stored === null ? null : toWhole(stored));
  return {
    ...row,
    inGrams: toWhole(row.inGrams),
    outGrams: toWhole(row.outGrams),
    differenceGrams: whole(row.differenceGrams),
    standardUncertaintyGrams: whole(row.standardUncertaintyGrams),
    isVoid: voidedBy !== null,
  };
}
