import { Controller, Get, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { changeoverOf, openChangeoverOf } from '../../hopper/changeovers.js';
import { DropChangeoverForm } from '../../hopper/changeover.form.js';
import { DoRung } from '../../hopper/do-rung.js';
import { DropChangeover } from '../../hopper/drop-changeover.js';
import { OpenChangeover } from '../../hopper/open-changeover.js';
import type { Asked } from '../../journal/entry-draft.js';
import { namesOf, peopleWithPin } from '../../people/people.js';
import { ProveOther } from '../../people/prove-other.js';
import { May } from '../../platform/actor.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm } from '../../platform/web/sent-form.js';
import { ChangeoverStartForm, RungForm } from './changeover-page.form.js';
import { changeoverPage, changeoverStartPage } from './changeover.page.js';
import { LineDesk } from './line-desk.js';
import { formatsOf } from './line-rows.js';

/** The ladder from one format to another: five rungs, each with its proof. */
@ApiExcludeController()
@Controller('line/:lineId/changeover')
export class LineChangeoverController {
  constructor(
    private readonly desk: LineDesk,
    private readonly openChangeover: OpenChangeover,
    private readonly doRung: DoRung,
    private readonly dropChangeover: DropChangeover,
    private readonly proveOther: ProveOther,
  ) {}

  @Get()
  @May('run-line')
  show(@Looking() viewer: Viewer, @Param('lineId', ParseUUIDPipe) lineId: string): Promise<VNode> {
    return this.page(viewer, lineId, null);
  }

  @Post()
  @May('run-line')
  open(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
  ) {
    return sent.take({
      form: ChangeoverStartForm,
      timeZone: viewer.timeZone,
      act: (form) => this.openChangeover.execute(asked, { ...form, lineId }),
      next: () => `/line/${lineId}/changeover`,
      again: (trouble) => this.page(viewer, lineId, trouble),
    });
  }

  @Post(':changeoverId/rungs')
  @May('run-line')
  rung(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
    @Param('changeoverId', ParseUUIDPipe) changeoverId: string,
  ) {
    return sent.take({
      form: RungForm,
      timeZone: viewer.timeZone,
      act: async ({ badge, person, pin, code, password, ...form }) => {
        const proof = { badge, person, pin, code, password };
        const other =
          form.rung === 'code-checked'
            ? await this.proveOther.execute(asked.actor, proof, { address: sent.address })
            : null;
        return this.doRung.execute(asked, changeoverId, { ...form, secondPersonId: other?.id ?? null });
      },
      next: ({ rung }) => (rung === 'code-checked' ? `/line/${lineId}` : `/line/${lineId}/changeover`),
      says: ({ rung }) => ({ code: rung === 'code-checked' ? 'said-changeover-done' : 'said-rung', facts: {} }),
      again: (trouble) => this.page(viewer, lineId, trouble),
    });
  }

  @Post(':changeoverId/drop')
  @May('run-line')
  drop(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('lineId', ParseUUIDPipe) lineId: string,
    @Param('changeoverId', ParseUUIDPipe) changeoverId: string,
  ) {
    return sent.take({
      form: DropChangeoverForm,
      timeZone: viewer.timeZone,
      act: (form) => this.dropChangeover.execute(asked, changeoverId, form),
      next: () => `/line/${lineId}`,
      says: () => ({ code: 'said-changeover-dropped', facts: {} }),
      again: (trouble) => this.page(viewer, lineId, trouble),
    });
  }

  private async page(viewer: Viewer, lineId: string, trouble: FormTrouble | null): Promise<VNode> {
    const { reader } = this.desk;
    const { siteId, personId } = viewer.actor;
    const at = await this.desk.line(viewer, lineId);
    const open = await openChangeoverOf(reader, lineId);
    if (open === null) {
      const formats = (await formatsOf(reader, siteId)).filter(({ id }) => id !== at.run?.formatId);
      return changeoverStartPage({ viewer, at, formats, trouble });
    }
    const changeover = await changeoverOf(reader, siteId, open.id);
    const seconds = changeover.rungs.flatMap(({ secondPersonId }) => secondPersonId ?? []);
    const people = viewer.deviceCode === null ? [] : await peopleWithPin(reader, siteId);
    const others = people.filter(({ id }) => id !== personId);
    return changeoverPage({ viewer, at, changeover, names: await namesOf(reader, seconds), people: others, trouble });
  }
}
