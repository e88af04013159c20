import { Controller, Get, Inject, Param, ParseUUIDPipe, Post, Req } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import { SetHoldClass } from '../../disposition/set-hold-class.js';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { Asking, Looking, type HouseRequest, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { fileTrouble, type FileTrouble } from './file-trouble.js';
import { ClassOnPageForm, LiftOnPageForm } from './hold-file.form.js';
import { HoldFiles } from './hold-file.js';
import { holdFilePage } from './hold-file.page.js';
import { LiftOnPage } from './lift-on-page.js';

type Answer = Promise<VNode | TakenForScript | null>;

@ApiExcludeController()
@Controller('quality/holds')
export class HoldFileController {
  constructor(
    private readonly liftOnPage: LiftOnPage,
    private readonly setHoldClass: SetHoldClass,
    private readonly holdFiles: HoldFiles,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  @Get(':id')
  @May('read')
  one(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.file(viewer, id, null);
  }

  @Post(':id/class')
  @May('lift-holds')
  setClass(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Answer {
    return sent.take({
      form: ClassOnPageForm,
      timeZone: viewer.timeZone,
      act: ({ hazard, classReason }) => this.setHoldClass.execute(asked, { hold: id, hazard, reason: classReason }),
      next: () => `/quality/holds/${id}`,
      says: ({ hazard }) => ({ code: `said-class-${hazard}`, facts: {} }),
      again: async (trouble) => this.file(viewer, id, await fileTrouble(this.reader, viewer, 'class', trouble)),
    });
  }

  @Post(':id/lift')
  @May('lift-holds')
  lift(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Req() request: HouseRequest,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Answer {
    return sent.take({
      form: LiftOnPageForm,
      timeZone: viewer.timeZone,
      act: (form) => this.liftOnPage.execute(asked, Object.assign(form, { hold: id }), request.ip),
      next: () => '/quality',
      says: (number) => ({ code: 'said-lifted', facts: { hold: number } }),
      again: async (trouble) => this.file(viewer, id, await fileTrouble(this.reader, viewer, 'lift', trouble)),
    });
  }

  private async file(viewer: Viewer, id: string, trouble: FileTrouble | null): Promise<VNode> {
    return holdFilePage({ viewer, ...(await this.holdFiles.read(viewer.actor, id)), trouble });
  }
}
