import { Inject, Injectable } from '@nestjs/common';
import type { VNode } from 'preact';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { NotFound } from '../../platform/refusal.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import type { Viewer } from '../../platform/web/request.js';
import { fileTrouble, type FileTrouble } from '../quality/file-trouble.js';
import { noticePage } from './notice.page.js';
import { RecallFiles } from './recall-file.js';
import { recallFilePage } from './recall-file.page.js';

/** The page of one recall, fresh or with what was wrong with a form of it. */
@Injectable()
export class RecallPages {
  constructor(
    private readonly files: RecallFiles,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  async page(viewer: Viewer, id: string, trouble: FileTrouble | null): Promise<VNode> {
    return recallFilePage({ viewer, file: await this.files.read(viewer.actor, id), trouble });
  }

  async again(viewer: Viewer, id: string, of: string, trouble: FormTrouble): Promise<VNode> {
    return this.page(viewer, id, await fileTrouble(this.reader, viewer, of, trouble));
  }

  /** @throws {NotFound} `customer`, for one that nothing of it went to */
  async notice(viewer: Viewer, id: string, customerId: string): Promise<VNode> {
    const file = await this.files.read(viewer.actor, id);
    const customer = file.figures.customers.find((one) => one.customerId === customerId);
    if (customer === undefined) throw new NotFound('customer', customerId);
    return noticePage({ viewer, file, customer });
  }
}
