import { Inject, Injectable } from '@nestjs/common';
import { Clock, shifted, type Instant } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { Ids } from '../../platform/ids.js';
import { NotFound, Refusal } from '../../platform/refusal.js';
import { packWeigherOf, type PackWeigherRow } from '../pack-weighers.js';
import { headingsOf, packed } from './file-bytes.js';
import { fileLayoutById, fileLayoutOf } from './file-layouts.js';
import { csvLayoutOf, type SavedLayout } from './saved-layout.js';
import { WeightFile } from './weight-file.entity.js';

/** A file that was brought and may be stored. */
export interface BroughtFile {
  readonly id: string;
  readonly name: string;
  readonly digest: string;
  readonly byteCount: number;
  readonly broughtAt: Instant;
  readonly packed: Uint8Array;
  readonly weigher: PackWeigherRow;
  readonly layout: SavedLayout;
}

/** So long a file waits between its dry run and the act that stores it. */
const keptMilliseconds = 2 * 86_400_000;
const longestName = 100;

/** Files of weights that wait to be looked at and stored. They are no facts, and go after two days. */
@Injectable()
export class WeightFiles {
  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly units: UnitOfWork,
    private readonly clock: Clock,
    private readonly ids: Ids,
  ) {}

  /** @throws {Refusal} `file-layout-missing`, `file-is-no-text`; {BadForm} a column; {NotTaken} `file-too-large`, `file-empty` */
  async bring(
    siteId: string,
    weigherId: string,
    file: { readonly name: string; readonly bytes: AsyncIterable<Uint8Array> },
  ): Promise<{ readonly id: string }> {
    const weigher = await packWeigherOf(this.reader, siteId, weigherId);
    const layout = await fileLayoutOf(this.reader, weigherId);
    if (layout === null) throw new Refusal('file-layout-missing', { weigher: weigher.code });
    const content = await packed(file.bytes);
    // Whether its columns are there is said now, not when it is looked at.
    csvLayoutOf(layout.layout, await headingsOf(content.packed, layout.layout.headerLines));
    const id = this.ids.next();
    const broughtAt = this.clock.now();
    const name = file.name.replaceAll(/[^\p{L}\p{N} ._()-]/gu, '_').slice(-longestName) || '_';
    await this.units.run(async (tx) => {
      await tx.sql`DELETE FROM "weight_file" WHERE "brought_at" < ${shifted(broughtAt, -keptMilliseconds)}`;
      await tx.insert(WeightFile, { id, weigherId, layoutId: layout.id, name, ...content, broughtAt });
    });
    return { id };
  }

  /** @throws {NotFound} for one that has gone, and of another site or weigher */
  async find(siteId: string, fileId: string): Promise<BroughtFile> {
    const [row] = await this.reader.sql<
      Omit<BroughtFile, 'weigher' | 'layout'> & { weigherId: string; layoutId: string }
    >`
      SELECT f."id", f."name", f."digest", f."byte_count" AS "byteCount", f."brought_at" AS "broughtAt", f."packed",
        f."weigher_id" AS "weigherId", f."layout_id" AS "layoutId"
      FROM "weight_file" f JOIN "pack_weigher" w ON w."id" = f."weigher_id"
      WHERE f."id" = ${fileId} AND w."site_id" = ${siteId}`;
    if (row === undefined || row.broughtAt < shifted(this.clock.now(), -keptMilliseconds)) {
      throw new NotFound('weight-file', fileId);
    }
    const { weigherId, layoutId, ...file } = row;
    return {
      ...file,
      weigher: await packWeigherOf(this.reader, siteId, weigherId),
      layout: await fileLayoutById(this.reader, layoutId),
    };
  }
}
