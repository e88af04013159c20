import { Injectable } from '@nestjs/common';
import { findHold } from '../disposition/holds.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { BadForm, NotFound } from '../platform/refusal.js';
import type { OpenRecallForm } from './recall.form.js';

interface Origin {
  readonly originKind: 'hold' | 'complaint' | null;
  readonly originId: string | null;
}

/** Finds a complaint of a site by its id; throws `NotFound` where there is none. */
export type FindComplaint = (from: ReadFrom, siteId: string, id: string) => Promise<{ readonly id: string }>;

/** What a recall begins with. Complaints stand beside recalls, so a later room says how one is found. */
@Injectable()
export class RecallOrigins {
  private findComplaint: FindComplaint | null = null;

  findComplaintsBy(find: FindComplaint): void {
    this.findComplaint = find;
  }

  /**
   * The hold or complaint of the site, or none.
   *
   * @throws {NotFound} hold, complaint
   * @throws {BadForm} where the kind is there and the id is not, or the other way round
   */
  async find(
    from: ReadFrom,
    siteId: string,
    { originKind = null, originId = null }: Pick<OpenRecallForm, 'originKind' | 'originId'>,
  ): Promise<Origin> {
    if (originKind === null && originId === null) return { originKind, originId };
    if (originKind === null) throw new BadForm([{ field: 'originKind', code: 'field-missing', facts: {} }]);
    if (originId === null) throw new BadForm([{ field: 'originId', code: 'field-missing', facts: {} }]);
    const find = originKind === 'hold' ? findHold : this.findComplaint;
    if (find === null) throw new NotFound(originKind, originId);
    return { originKind, originId: (await find(from, siteId, originId)).id };
  }
}
