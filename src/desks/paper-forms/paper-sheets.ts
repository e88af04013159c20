import { Inject, Injectable } from '@nestjs/common';
import type { VNode } from 'preact';
import { namesOf } from '../../people/people.js';
import { mayDo } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { inChunks } from '../../platform/database/in-chunks.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import type { Viewer } from '../../platform/web/request.js';
import { colleaguesOf, scalesOf } from '../line/line-rows.js';
import type { CheckPlanRow } from '../../line-checks/check-plan-rows.js';
import { planAt, versionsOfPlan } from '../../line-checks/check-plans.js';
import { permissionOf, type FormKind, type PaperFormFacts } from './form-kinds.js';
import type { FormRow } from './form-rows.js';
import { notKnown } from './paper-form.form.js';
import { findPaperForm, type PaperForm } from './paper-forms.js';
import { paperSheetPage } from './paper-sheet.page.js';
import { lastTimeOf } from './row-asked.js';
import { rowAt, type RowAt, type RowWanted } from './row-at.js';

/** Which page of a sheet is asked for, and what was wrong with what it sent. */
export interface SheetWanted {
  readonly number: string;
  readonly row: number | null;
  /** The letter of the check that the row names, on sheets of checks. */
  readonly check?: string | null;
  readonly trouble: FormTrouble | null;
}

/** Reads the page of a sheet. */
@Injectable()
export class PaperSheets {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly clock: Clock,
  ) {}

  async page(viewer: Viewer, { number, row, check = null, trouble }: SheetWanted): Promise<VNode> {
    const { siteId, roles } = viewer.actor;
    const form = await findPaperForm(this.reader, siteId, number);
    const chosen = mayDo(roles, permissionOf[form.facts.kind]) ? chosenRow(form.rows, row) : null;
    const entries = form.rows.flatMap((one) => one.entries);
    const people = entries.flatMap(({ keyedBy, writtenBy }) => [keyedBy, writtenBy]);
    const until = lastTimeOf(form.rows, chosen?.row ?? 1, this.clock.now());
    const planId = planOf(form.facts, check, trouble);
    return paperSheetPage({
      viewer,
      form,
      row: chosen,
      plan: planId === null ? null : await this.planShown(siteId, { planId, until, trouble }),
      // Nobody is left out: who keys it in may have written it.
      people: await colleaguesOf(this.reader, siteId, null),
      scales: await scalesOf(this.reader, siteId),
      names: await namesOf(this.reader, people.filter((id) => id !== null && id !== notKnown).map(String)),
      things: await thingsOf(this.reader, form),
      until,
      trouble,
    });
  }

  /** The version of then, where what was sent was written under another one than the page had shown. */
  private async planShown(
    siteId: string,
    {
      planId,
      until,
      trouble,
    }: { readonly planId: string; readonly until: string; readonly trouble: FormTrouble | null },
  ): Promise<CheckPlanRow> {
    const wanted = trouble?.facts['versionId'] ?? trouble?.entered['versionId'];
    const version = (await versionsOfPlan(this.reader, planId)).find(({ id }) => id === wanted);
    return version ?? planAt(this.reader, siteId, planId, until);
  }

  /**
   * The row that somebody keys in.
   *
   * @throws {Refusal} `paper-row-not-there`, `paper-sheet-of-another-kind`
   * @throws {NotFound} `paper-form`
   */
  rowAt(kind: FormKind, wanted: Omit<RowWanted, 'now'>): Promise<RowAt> {
    return rowAt(this.reader, kind, { ...wanted, now: this.clock.now() });
  }

  /** The row that comes next after one was keyed in; null: none is left. */
  async nextRow(siteId: string, number: string, after: number): Promise<number | null> {
    const { rows } = await findPaperForm(this.reader, siteId, number);
    const blank = rows.filter(({ state }) => state === 'blank');
    return (blank.find(({ row }) => row > after) ?? blank[0])?.row ?? null;
  }
}

/** The row that was asked for, as long as something of it is left to key in; else the first such. */
function chosenRow(rows: readonly FormRow[], row: number | null): FormRow | null {
  const left = rows.filter(({ state }) => state === 'blank' || state === 'begun');
  return left.find((one) => one.row === row) ?? left[0] ?? null;
}

/** The plan of the check that a row is of: that of the form that was sent, of the letter, or the only one. */
function planOf({ checks = [] }: PaperFormFacts, letter: string | null, trouble: FormTrouble | null): string | null {
  const sent = checks.find(({ planId }) => planId === trouble?.entered['planId']);
  const only = checks.length === 1 ? checks[0] : undefined;
  return (sent ?? checks.find((one) => one.letter === letter) ?? only)?.planId ?? null;
}

/** What to call the things that entries are about. */
async function thingsOf(from: ReadFrom, { rows }: PaperForm): Promise<ReadonlyMap<string, string>> {
  const ids = rows.flatMap(({ entries }) => entries.map(({ subjectId }) => subjectId));
  const named = await inChunks(
    ids,
    (chunk) => from.sql<{ id: string; name: string }>`
      SELECT "id", "number" AS "name" FROM "bulk_bag" WHERE "id" IN (${() => chunk})
      UNION ALL SELECT "id", "sscc" AS "name" FROM "pallet" WHERE "id" IN (${() => chunk})`,
  );
  return new Map(named.map(({ id, name }) => [id, name]));
}
