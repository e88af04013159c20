import { Inject, Injectable } from '@nestjs/common';
import type { VNode } from 'preact';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import type { Viewer } from '../../platform/web/request.js';
import { fileTrouble, type FileTrouble } from '../quality/file-trouble.js';
import { ComplaintFiles } from './complaint-file.js';
import { complaintFilePage } from './complaint-file.page.js';
import { letterPage } from './letter.page.js';
import { ReadByCustomer } from './read-by-customer.js';

/** The page of one complaint, fresh or with what was wrong with a form of it. */
@Injectable()
export class ComplaintPages {
  constructor(
    private readonly files: ComplaintFiles,
    private readonly readByCustomer: ReadByCustomer,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  async page(viewer: Viewer, id: string, trouble: FileTrouble | null): Promise<VNode> {
    const file = await this.files.read(viewer.actor, id);
    const code = trouble?.form.entered['code'];
    const isAsked = trouble?.form.code === 'complaint-code-which' && typeof code === 'string';
    const findings = isAsked ? await this.readByCustomer.choices(viewer.actor.siteId, code) : [];
    return complaintFilePage({ viewer, file, findings, trouble });
  }

  async again(viewer: Viewer, id: string, of: string, trouble: FormTrouble): Promise<VNode> {
    return this.page(viewer, id, await fileTrouble(this.reader, viewer, of, trouble));
  }

  async letter(viewer: Viewer, id: string): Promise<VNode> {
    return letterPage({ viewer, letter: await this.files.letter(viewer.actor, id) });
  }
}
