import { Controller, Get, Inject, Post, Query } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { HeavyReads } from '../../platform/database/heavy-reads.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { BadForm, NotFound, Refusal } from '../../platform/refusal.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { instantOfLocal, NoSuchTime } from '../../platform/web/local-time.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { OpenRecall, type RecallOpened } from '../../recalls/open-recall.js';
import type { RecallScopeForm } from '../../recalls/recall.form.js';
import { findSubjects } from '../find-subjects.js';
import { choiceKey, type Finding } from '../finding.js';
import { choicesOfComplaint, choicesOfHold, choicesOfSubject, type ScopeChoice } from './recall-choices.js';
import { recallChoosePage } from './recall-choose.page.js';
import { originOf } from './recall-origin-text.js';
import { recallNewPage } from './recall-new.page.js';
import { previewRecall } from './recall-new.js';
import { OpenOnPageForm, RecallNewQuery } from './recall-page.form.js';
import { namedScopes, scopeOfKey } from './scope-key.js';
import { shiftPlaces } from './shift-places.js';

/** What was found of a code: what to recall of it, or the things that it may mean. */
interface Found {
  readonly choices: readonly ScopeChoice[] | null;
  readonly findings: readonly Finding[];
  readonly refusal: Refusal | null;
}

@ApiExcludeController()
@Controller('quality/recalls/new')
export class RecallNewController {
  constructor(
    private readonly openRecall: OpenRecall,
    private readonly heavy: HeavyReads,
    private readonly clock: Clock,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Get()
  @May('run-recalls')
  async show(@Looking() viewer: Viewer, @Query() query: RecallNewQuery): Promise<VNode> {
    if (query.look == null && (query.scopes ?? []).length === 0) return this.choose(viewer, query, null);
    try {
      return await this.preview(viewer, scopesOf(query, viewer.timeZone), originIn(query), null);
    } catch (error) {
      if (error instanceof NoSuchTime) return this.choose(viewer, query, new Refusal('field-not-local-time'));
      if (error instanceof BadForm) return this.choose(viewer, query, new Refusal('recall-time-missing'));
      if (error instanceof Refusal) return this.choose(viewer, query, error);
      throw error;
    }
  }

  @Post()
  @May('run-recalls')
  open(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
  ): Promise<VNode | TakenForScript | null> {
    return sent.take({
      form: OpenOnPageForm,
      timeZone: viewer.timeZone,
      act: ({ scopes, ...form }): Promise<RecallOpened> =>
        this.openRecall.execute(asked, { ...form, scopes: formsOf(scopes ?? []) }),
      next: ({ id }) => `/quality/recalls/${id}`,
      says: ({ number, kind }) => ({ code: `said-opened-${kind}`, facts: { recall: number } }),
      again: (trouble) => this.again(viewer, trouble),
    });
  }

  /** What could not be opened is shown again with what it covers; where that cannot be read, one chooses anew. */
  private async again(viewer: Viewer, trouble: FormTrouble): Promise<VNode> {
    const entered = trouble.entered as Readonly<Record<string, string | readonly string[] | undefined>>;
    const keys = [entered['scopes'] ?? []].flat();
    const one = (name: string): string | null => [entered[name] ?? []].flat()[0] ?? null;
    const begun = { originKind: one('originKind'), originId: one('originId') };
    try {
      return await this.preview(viewer, formsOf(keys), begun, trouble);
    } catch (error) {
      if (error instanceof Refusal || error instanceof NotFound) {
        return this.choose(viewer, {}, new Refusal(trouble.code, trouble.facts));
      }
      throw error;
    }
  }

  private async preview(
    viewer: Viewer,
    scopes: readonly RecallScopeForm[],
    begun: Parameters<typeof originOf>[2],
    trouble: FormTrouble | null,
  ): Promise<VNode> {
    const { siteId } = viewer.actor;
    const read = await this.heavy.snapshot(async (from) => ({
      preview: await previewRecall(from, siteId, scopes),
      origin: await originOf(from, siteId, begun),
    }));
    return recallNewPage({ viewer, ...read, trouble });
  }

  private async choose(viewer: Viewer, query: RecallNewQuery, refusal: Refusal | null): Promise<VNode> {
    const { siteId } = viewer.actor;
    const now = this.clock.now();
    const read = await this.heavy.snapshot(async (from) => {
      const found = await find(from, siteId, query, now);
      const named =
        found.choices === null
          ? null
          : await namedScopes(
              from,
              found.choices.map(({ scope }) => scope),
            );
      return {
        findings: found.findings,
        refusal: refusal ?? found.refusal,
        choices:
          named?.map((scope, place) => ({ ...scope, isTicked: found.choices?.[place]?.isTicked === true })) ?? null,
        origin: await originOf(from, siteId, originIn(query)),
      };
    });
    return recallChoosePage({
      viewer,
      code: query.code ?? '',
      places: await shiftPlaces(this.reader, siteId),
      now,
      ...read,
    });
  }
}

/** What a recall may be of, by the hold or complaint it begins with, else by the code. */
async function find(from: ReadFrom, siteId: string, query: RecallNewQuery, now: string): Promise<Found> {
  const none = { findings: [], refusal: null };
  const { code = null, meant = null, hold = null, complaint = null } = query;
  if (code === null) {
    if (hold !== null) return { ...none, choices: await choicesOfHold(from, siteId, hold) };
    return { ...none, choices: complaint === null ? null : await choicesOfComplaint(from, siteId, complaint) };
  }
  const all = await findSubjects(from, siteId, { code, localTime: null, now });
  const findings = all.filter((finding) => meant === null || choiceKey(finding) === meant);
  const [only] = findings;
  if (only === undefined) return { choices: null, findings: [], refusal: new Refusal('code-not-found', { code }) };
  if (findings.length > 1 || (only.isDoubtful && meant === null)) return { ...none, choices: null, findings };
  return { ...none, choices: await choicesOfSubject(from, siteId, only.subject) };
}

function originIn({ hold = null, complaint = null }: RecallNewQuery): {
  originKind: string | null;
  originId: string | null;
} {
  if (hold !== null) return { originKind: 'hold', originId: hold };
  return complaint === null ? { originKind: null, originId: null } : { originKind: 'complaint', originId: complaint };
}

/** The ticked things, or the shift. @throws {NoSuchTime} for a time that the plant's clocks did not show */
function scopesOf({ scopes, place, fromAt, untilAt }: RecallNewQuery, timeZone: string): readonly RecallScopeForm[] {
  const ofPlace = place == null ? null : scopeOfKey(place);
  if (ofPlace === null) return formsOf(scopes ?? []);
  const instant = (local: string | null | undefined): string | null => {
    return local == null || local === '' ? null : instantOfLocal(local, timeZone);
  };
  return [{ ...ofPlace, fromAt: instant(fromAt), untilAt: instant(untilAt) }];
}

function formsOf(keys: readonly string[]): RecallScopeForm[] {
  return keys.flatMap((key) => scopeOfKey(key) ?? []);
}
