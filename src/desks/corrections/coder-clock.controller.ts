import { Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { clockSentence } from '../../plant/clock-text.js';
import { clocksOfCoder, clockToCorrect } from '../../plant/coder-clocks.js';
import { CorrectCoderClock } from '../../plant/correct-coder-clock.js';
import { coderOfLine, lineOf, uncomparedCoderClock } from '../../plant/plant-facts.js';
import type { CoderRow } from '../../plant/plant-rows.js';
import { SetCoderClock } from '../../plant/set-coder-clock.js';
import { May, mayDo } from '../../platform/actor.js';
import { Clock } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { BadForm, NotFound, Refusal } from '../../platform/refusal.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { localSecondOfInstant } from '../../platform/web/local-time.js';
import { sayLocally } from '../../platform/web/local-text.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { CorrectionRipple } from '../../tracing/correction-ripple.js';
import { takeByRipple } from '../../tracing/ripple-step.js';
import { ClockCorrectionForm, CompareClockForm, secondsAhead } from './coder-clock.form.js';
import { clockCorrectionPage, coderClockPage } from './coder-clock.page.js';

/** A coder's clock against the plant's: compared, and what was compared wrongly put right. */
@ApiExcludeController()
@Controller()
export class CoderClockController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly clock: Clock,
    private readonly ripple: CorrectionRipple,
    private readonly setCoderClock: SetCoderClock,
    private readonly correctCoderClock: CorrectCoderClock,
  ) {}

  @Get('lines/:id/coder-clock')
  @May('read')
  show(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) lineId: string): Promise<VNode> {
    return this.page(viewer, lineId, null);
  }

  @Post('lines/:id/coder-clock')
  @May('run-line')
  async compare(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) lineId: string,
  ): Promise<VNode | TakenForScript | null> {
    const { line, coder } = await this.coderOf(viewer, lineId);
    if (coder === null) throw new Refusal('line-without-coder', { line: line.code });
    const serverShows = localSecondOfInstant(this.clock.now(), viewer.timeZone);
    return takeByRipple(sent, {
      ...{ viewer, asked, ripple: this.ripple, form: CompareClockForm, times: ['validFrom'] },
      correct: (asking, { shownAt, referenceAt, uncertaintySeconds, validFrom, reason }) => {
        const offsetSeconds = secondsAhead(shownAt, referenceAt ?? serverShows);
        const compared = { coderId: coder.id, offsetSeconds, uncertaintySeconds };
        return this.setCoderClock.execute(asking, {
          ...compared,
          validFrom: validFrom ?? null,
          reason: reason ?? null,
        });
      },
      meant: { referenceAt: serverShows },
      back: `/lines/${lineId}/coder-clock`,
      next: () => `/lines/${lineId}/coder-clock`,
      says: () => ({ code: 'said-clock-compared', facts: { coder: coder.code } }),
      again: (trouble) => this.page(viewer, lineId, trouble),
    });
  }

  @Get('coder-clocks/:id/correct')
  @May('correct-coder-clocks')
  showOne(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.correctionPage(viewer, id, null);
  }

  @Post('coder-clocks/:id/correct')
  @May('correct-coder-clocks')
  async correct(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Promise<VNode | TakenForScript | null> {
    const { lineId } = await clockToCorrect(this.reader, viewer.actor.siteId, id);
    return takeByRipple(sent, {
      ...{ viewer, asked, ripple: this.ripple, form: ClockCorrectionForm, times: ['validFrom'] },
      correct: (asking, { shownAt, referenceAt, ...form }) =>
        this.correctCoderClock.execute(asking, id, { ...form, offsetSeconds: bothOrNone(shownAt, referenceAt) }),
      back: `/coder-clocks/${id}/correct`,
      next: () => `/lines/${lineId}/coder-clock`,
      says: () => ({ code: 'said-corrected', facts: {} }),
      again: (trouble) => this.correctionPage(viewer, id, trouble),
    });
  }

  private async coderOf(
    { actor }: Viewer,
    lineId: string,
  ): Promise<{ line: { code: string }; coder: CoderRow | null }> {
    const line = await lineOf(this.reader, lineId);
    if (line.siteId !== actor.siteId) throw new NotFound('packing-line', lineId);
    return { line, coder: await coderOfLine(this.reader, lineId) };
  }

  private async page(viewer: Viewer, lineId: string, trouble: FormTrouble | null): Promise<VNode> {
    const { line, coder } = await this.coderOf(viewer, lineId);
    const clocks = coder === null ? [] : await clocksOfCoder(this.reader, coder.id);
    const { roles } = viewer.actor;
    return coderClockPage({
      ...{ viewer, lineId, line: line.code, coder: coder?.code ?? null, clocks: clocks.toReversed(), trouble },
      ...{
        mayCompare: mayDo(roles, 'run-line'),
        mayCorrect: mayDo(roles, 'correct-coder-clocks'),
        now: this.clock.now(),
      },
      uncomparedSeconds: uncomparedCoderClock.uncertaintySeconds,
    });
  }

  private async correctionPage(viewer: Viewer, id: string, trouble: FormTrouble | null): Promise<VNode> {
    const clock = await clockToCorrect(this.reader, viewer.actor.siteId, id);
    const { coderCode: coder, lineCode: line, validFrom: at } = clock;
    const says = sayLocally('correction-clock-is', { coder, at, clock: clockSentence(clock) }, viewer.timeZone);
    return clockCorrectionPage({ viewer, coder, line, says, action: `/coder-clocks/${id}/correct`, trouble });
  }
}

/** @throws {BadForm} where one of the two clocks is left out */
function bothOrNone(shownAt: string | null | undefined, referenceAt: string | null | undefined): number | null {
  if (shownAt == null && referenceAt == null) return null;
  if (shownAt != null && referenceAt != null) return secondsAhead(shownAt, referenceAt);
  throw new BadForm([{ field: shownAt == null ? 'shownAt' : 'referenceAt', code: 'field-missing', facts: {} }]);
}
