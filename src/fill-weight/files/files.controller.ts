import { Controller, Get, Inject, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { VNode } from 'preact';
import type { Asked } from '../../journal/entry-draft.js';
import { May } from '../../platform/actor.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { NotTaken, Refusal } from '../../platform/refusal.js';
import { Brought, TakesFile } from '../../platform/web/brought-file.js';
import type { FilePart } from '../../platform/web/form-parts.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Asking, Looking, type Viewer } from '../../platform/web/request.js';
import { Sent, type SentForm, type TakenForScript } from '../../platform/web/sent-form.js';
import { packWeigherOf } from '../pack-weighers.js';
import { NothingForm } from '../set-up/pack-weigher-set-up.form.js';
import { dryRunPage } from './dry-run.page.js';
import { FileLayoutForm } from './file-layout.form.js';
import { fileLayoutOf } from './file-layouts.js';
import { filesPage } from './files.page.js';
import { SetFileLayout } from './set-file-layout.js';
import { StoreWeightFile } from './store-weight-file.js';
import { StoreWeightFileForm } from './weight-file.form.js';
import { WeightFiles } from './weight-files.js';

type Taken = Promise<VNode | TakenForScript | null>;
type Trouble = { readonly of: string; readonly why: FormTrouble } | null;

/** Files of weights: what their columns mean, a dry run, and the act that stores what was shown. */
@ApiExcludeController()
@Controller('set-up/pack-weighers/:id')
export class FilesController {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly files: WeightFiles,
    private readonly store: StoreWeightFile,
    private readonly setLayout: SetFileLayout,
  ) {}

  @Get('files')
  @May('read')
  see(@Looking() viewer: Viewer, @Param('id', ParseUUIDPipe) id: string): Promise<VNode> {
    return this.page(viewer, id, null);
  }

  @Post('layout')
  @May('set-up-plant')
  layout(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Taken {
    return sent.take({
      form: FileLayoutForm,
      timeZone: viewer.timeZone,
      act: (form) => this.setLayout.execute(asked, id, form),
      next: () => `/set-up/pack-weighers/${id}/files`,
      says: () => ({ code: 'weigher-saved', facts: {} }),
      again: (why) => this.page(viewer, id, { of: 'layout', why }),
    });
  }

  @Post('files')
  @May('bring-weight-files')
  @TakesFile()
  bring(
    @Brought() file: FilePart,
    @Sent() sent: SentForm,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
  ): Taken {
    return sent.take({
      form: NothingForm,
      timeZone: viewer.timeZone,
      act: () => this.files.bring(viewer.actor.siteId, id, file).catch(asRefusal),
      next: ({ id: fileId }) => `/set-up/pack-weighers/${id}/files/${fileId}`,
      again: (why) => this.page(viewer, id, { of: 'files', why }),
    });
  }

  @Get('files/:file')
  @May('read')
  look(@Looking() viewer: Viewer, @Param('file', ParseUUIDPipe) fileId: string): Promise<VNode> {
    return this.dryRun(viewer, fileId, null);
  }

  @Post('files/:file')
  @May('bring-weight-files')
  keep(
    @Sent() sent: SentForm,
    @Asking() asked: Asked,
    @Looking() viewer: Viewer,
    @Param('id', ParseUUIDPipe) id: string,
    @Param('file', ParseUUIDPipe) fileId: string,
  ): Taken {
    return sent.take({
      form: StoreWeightFileForm,
      timeZone: viewer.timeZone,
      act: (form) => this.store.execute(asked, fileId, form),
      next: () => `/set-up/pack-weighers/${id}`,
      says: ({ acceptedCount, repeatedCount, refusedCount }) => ({
        code: 'dry-run-stored',
        facts: { fresh: acceptedCount, known: repeatedCount, wrong: refusedCount },
      }),
      again: (why) => this.dryRun(viewer, fileId, why),
    });
  }

  private async page(viewer: Viewer, id: string, trouble: Trouble): Promise<VNode> {
    const weigher = await packWeigherOf(this.reader, viewer.actor.siteId, id);
    const saved = await fileLayoutOf(this.reader, id);
    return filesPage({ viewer, weigher, layout: saved?.layout ?? null, trouble });
  }

  private async dryRun(viewer: Viewer, fileId: string, trouble: FormTrouble | null): Promise<VNode> {
    return dryRunPage({ viewer, ...(await this.store.dryRun(viewer.actor.siteId, fileId)), trouble });
  }
}

/** What is too large or broken is said on the page of the form that brought it. */
function asRefusal(error: unknown): never {
  throw error instanceof NotTaken ? new Refusal(error.code, error.facts) : error;
}
