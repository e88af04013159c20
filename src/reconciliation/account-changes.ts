import type { AccountLine, AccountView } from './account-view.js';

/** A line that is not what was signed: one side is null where it came or went. */
export interface LineChange {
  readonly signed: AccountLine | null;
  readonly now: AccountLine | null;
}

/** What has become of a signed account's records since. */
export interface AccountChanges {
  readonly now: AccountView;
  /** Lines that came, went, or weigh something else; the rest of a line may differ too. */
  readonly lines: readonly LineChange[];
  /** Difference now less difference signed; null where either was not observed. */
  readonly movedByGrams: number | null;
  readonly hasChanged: boolean;
}

/** Sets the account as the records stand now beside the one that was signed. The signed one stays what it is. */
export function changesSince(signed: AccountView, now: AccountView): AccountChanges {
  const before = byRecord(signed.lines);
  const after = byRecord(now.lines);
  const keys = [...new Set([...before.keys(), ...after.keys()])];
  const lines = keys.flatMap((key): readonly LineChange[] => {
    const [was, is] = [before.get(key) ?? null, after.get(key) ?? null];
    return was !== null && is !== null && isSame(was, is) ? [] : [{ signed: was, now: is }];
  });
  const hasMoved = signed.verdict !== now.verdict || signed.differenceGrams !== now.differenceGrams;
  return {
    now,
    lines,
    movedByGrams:
      signed.differenceGrams === null || now.differenceGrams === null
        ? null
        : now.differenceGrams - signed.differenceGrams,
    hasChanged: lines.length > 0 || hasMoved,
  };
}

/** A run may stand twice where its line was linked anew; its lines are told apart by when they begin. */
function byRecord(lines: readonly AccountLine[]): ReadonlyMap<string, AccountLine> {
  const byKey = new Map<string, AccountLine>();
  for (const line of lines) {
    const key = `${line.kind} ${line.recordId}`;
    byKey.set(byKey.has(key) ? `${key} ${line.at}` : key, line);
  }
  return byKey;
}

function isSame(one: AccountLine, other: AccountLine): boolean {
  return (
    one.grams === other.grams &&
    one.basis === other.basis &&
    one.at === other.at &&
    one.isDoubtful === other.isDoubtful &&
    one.standardMilligrams === other.standardMilligrams &&
    one.sharedStandardMilligrams === other.sharedStandardMilligrams
  );
}
