import { Inject, Injectable } from '@nestjs/common';
import type { VNode } from 'preact';
import { gradesOf } from '../../plant/whole-plant.js';
import { Clock } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { isId } from '../../platform/is-id.js';
import type { Viewer } from '../../platform/web/request.js';
import { dryerDesk, dryersOf } from './dryer-desk.js';
import { dryerPage, dryersPage, type DryerProps } from './dryer.page.js';

/** Reads what the pages of the dryers show, and makes them. */
@Injectable()
export class DryerPages {
  constructor(
    private readonly clock: Clock,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  /** The dryers to choose from; where there is one only, that one. */
  async all(viewer: Viewer, isListAsked: boolean): Promise<VNode> {
    const dryers = await dryersOf(this.reader, viewer.actor.siteId);
    const [only, ...more] = dryers;
    if (only !== undefined && more.length === 0 && !isListAsked) return this.one(viewer, only.id, null);
    return dryersPage({ viewer, dryers });
  }

  /** `bag` comes to hand where several hang that nobody closed; `label` is the paper that was given out just now. */
  async one(
    viewer: Viewer,
    dryerId: string,
    trouble: DryerProps['trouble'],
    query: Readonly<Record<string, unknown>> = {},
  ): Promise<VNode> {
    const { siteId } = viewer.actor;
    const desk = await dryerDesk(this.reader, siteId, dryerId, this.clock.now());
    const chosen = desk.hanging.filter(({ id }) => id === query['bag']);
    const hanging = [...chosen, ...desk.hanging.filter((bag) => !chosen.includes(bag))];
    const grades = desk.run === null ? await gradesOf(this.reader, siteId) : [];
    const label = query['label'];
    const paperId = typeof label === 'string' && isId(label) ? label : null;
    return dryerPage({ viewer, desk: { ...desk, hanging }, grades, trouble, paperId });
  }
}
