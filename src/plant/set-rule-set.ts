import { Injectable } from '@nestjs/common';
import type { Asked } from '../journal/entry-draft.js';
import { RecordChange } from '../journal/record-change.js';
import { canonicalText, type Canonical } from '../platform/canonical-text.js';
import type { Tx } from '../platform/database/unit-of-work.js';
import { Ids } from '../platform/ids.js';
import { Refusal } from '../platform/refusal.js';
import { RuleSet } from './rule-set.entity.js';
import type { ConcessionRules, TimeUncertaintyRules, TipAtRiskRules } from './rule-kinds.js';
import type { SetRuleSetForm } from './rules.form.js';
import { insertVersion, settleRuleBeginning } from './valid-from.js';

/**
 * A set of rules of the house, from an instant on: the vehicle check, the limits of tipping at risk, how far
 * recorded times may be off, or how many persons a concession takes.
 * Refusals: `rules-incomplete`, `check-point-twice`, `rules-there-already` (where only the first were meant),
 * `valid-from-not-later`, `valid-from-in-the-past`.
 */
@Injectable()
export class SetRuleSet {
  constructor(
    private readonly changes: RecordChange,
    private readonly ids: Ids,
  ) {}

  /** `onlyFirst`: who sets the plant up gives the first rules; later ones are for quality to give. */
  execute(
    asked: Asked,
    form: SetRuleSetForm,
    { onlyFirst = false }: { readonly onlyFirst?: boolean } = {},
  ): Promise<{ readonly id: string; readonly validFrom: string }> {
    return this.changes.run(asked, form, async (tx, change) => {
      const { siteId } = asked.actor;
      const rules = rulesOf(form);
      const latest = await latestBeginning(tx, siteId, form.kind);
      if (onlyFirst && latest !== null) throw new Refusal('rules-there-already', { since: latest });
      const beginning = { validFrom: form.validFrom ?? null, reason: null, now: change.recordedAt, latest };
      const validFrom = settleRuleBeginning(beginning);
      const id = this.ids.next();
      await insertVersion(tx, RuleSet, { id, siteId, kind: form.kind, validFrom, rules: canonicalText(rules) });
      return {
        answer: { id, validFrom },
        entry: {
          action: 'set-rule-set',
          subject: { kind: 'site', id: siteId },
          after: { ruleSetId: id, kind: form.kind, validFrom, rules },
        },
      };
    });
  }
}

function rulesOf(form: SetRuleSetForm): Canonical {
  if (form.kind === 'vehicle-check') return vehicleCheckRules(form);
  if (form.kind === 'tip-at-risk') return numbersOf(form, ['mostWaitingBagCount', 'mostWaitingGrams']);
  if (form.kind === 'concession') return numbersOf(form, ['concessionPersonCount']);
  return numbersOf(form, ['scannedEarlierMinutes', 'statedEarlierMinutes', 'laterMinutes', 'handCountMinutes']);
}

/** Has the shape of `VehicleCheckRules`. */
function vehicleCheckRules(form: SetRuleSetForm): Canonical {
  const checkPoints = (form.checkPoints ?? []).map(({ code, text }) => ({ code, text }));
  if (checkPoints.length === 0) throw new Refusal('rules-incomplete', { kind: form.kind, missing: 'checkPoints' });
  const codes = checkPoints.map((point) => point.code);
  const twice = codes.find((code, place) => codes.indexOf(code) !== place);
  if (twice !== undefined) throw new Refusal('check-point-twice', { code: twice });
  return { checkPoints };
}

/** Has the shape of the rules that are numbers: all of them must be given. */
function numbersOf(form: SetRuleSetForm, names: readonly NumberName[]): Canonical {
  const given = names.map((name): readonly [NumberName, number] => {
    const value = form[name] ?? null;
    if (value === null) throw new Refusal('rules-incomplete', { kind: form.kind, missing: name });
    return [name, value];
  });
  return Object.fromEntries(given);
}

type NumberName = keyof (TipAtRiskRules & TimeUncertaintyRules & ConcessionRules);

async function latestBeginning(tx: Tx, siteId: string, kind: string): Promise<string | null> {
  const [last] = await tx.sql<{ validFrom: string }>`
    SELECT "valid_from" AS "validFrom" FROM "rule_set"
    WHERE "site_id" = ${siteId} AND "kind" = ${kind} AND "voided_by" IS NULL ORDER BY "valid_from" DESC LIMIT 1`;
  return last?.validFrom ?? null;
}
