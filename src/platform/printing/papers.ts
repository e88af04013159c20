import { Inject, Injectable, type BeforeApplicationShutdown, type OnModuleInit } from '@nestjs/common';
import { sha256 } from '../canonical-text.js';
import { Clock } from '../clock.js';
import { isTakenKey } from '../database/constraint-errors.js';
import { onlyRow, READER, type ReadFrom } from '../database/reading.js';
import { UnitOfWork } from '../database/unit-of-work.js';
import { JobRunner } from '../jobs/job-runner.js';
import { NotFound } from '../refusal.js';
import type { Language } from '../sentences/language.js';
import { PaperFile } from './paper-file.entity.js';
import { inPaperLanguage, paperLanguageOf } from './paper-language.js';
import { PaperRenderers } from './paper-renderers.js';
import { PaperThread } from './paper-thread.js';

/** A paper as lists show it. */
export interface PaperLine {
  readonly id: string;
  readonly kind: string;
  readonly number: string | null;
  readonly subjectKind: string;
  readonly subjectId: string;
  readonly issuedAt: string;
  readonly sha256: string | null;
  readonly isVoid: boolean;
}

/** The PDF of a paper with its hash, what its file is called, and the language that it speaks. */
export interface StoredPaper {
  readonly bytes: Buffer;
  readonly sha256: string;
  readonly name: string;
  readonly language: Language;
}

interface StoredRow {
  readonly bytes: Buffer;
  readonly sha256: string;
  readonly kind: string;
  readonly number: string | null;
  readonly facts: string;
}

/** What a PDF is drawn from. */
interface FrozenPaper {
  readonly kind: string;
  readonly edition: string;
  readonly facts: unknown;
  readonly issuedAt: string;
}

/** Renders issued papers and hands out their bytes. */
@Injectable()
export class Papers implements OnModuleInit, BeforeApplicationShutdown {
  private readonly underWay = new Map<string, Promise<void>>();
  private readonly thread = new PaperThread();

  constructor(
    @Inject(READER) private readonly reader: ReadFrom,
    private readonly units: UnitOfWork,
    private readonly clock: Clock,
    private readonly jobs: JobRunner,
    private readonly renderers: PaperRenderers,
  ) {}

  onModuleInit(): void {
    this.jobs.handle('render-paper', (payload) => this.render((payload as { paperId: string }).paperId));
  }

  /**
   * Makes the PDF of a paper unless it is there. Who asks while it is being made waits for it; a second call, after a
   * crash or in another process, finds the first one's bytes or makes the same.
   */
  render(paperId: string): Promise<void> {
    const first = this.underWay.get(paperId);
    if (first !== undefined) return first;
    const mine = this.makeFile(paperId).finally(() => this.underWay.delete(paperId));
    this.underWay.set(paperId, mine);
    return mine;
  }

  private async makeFile(paperId: string): Promise<void> {
    const [paper] = await this.reader.sql<{
      kind: string;
      edition: string;
      facts: string;
      issuedAt: string;
      file: string | null;
    }>`
      SELECT p."kind", p."edition", p."facts", p."issued_at" AS "issuedAt", f."paper_id" AS "file"
      FROM "paper" p LEFT JOIN "paper_file" f ON f."paper_id" = p."id" WHERE p."id" = ${paperId}`;
    if (paper === undefined) throw new NotFound('paper', paperId);
    if (paper.file !== null) return;
    const { kind, edition, issuedAt } = paper;
    const facts: unknown = JSON.parse(paper.facts);
    const bytes = Buffer.from(await this.draw({ kind, edition, facts, issuedAt }));
    const file = { paperId, bytes, sha256: sha256(bytes), renderedAt: this.clock.now() };
    try {
      await this.units.run((tx) => tx.insert(PaperFile, file));
    } catch (error) {
      // Another server process has drawn it meanwhile: the same bytes.
      if (!isTakenKey(error)) throw error;
    }
  }

  private draw({ kind, edition, facts, issuedAt }: FrozenPaper): Promise<Uint8Array> {
    const url = this.renderers.besideOf(kind, edition);
    const language = paperLanguageOf(facts);
    if (url !== null) return this.thread.draw({ url, facts, issuedAt, edition, language });
    return inPaperLanguage(() => this.renderers.of(kind, edition)(facts, issuedAt), language);
  }

  async beforeApplicationShutdown(): Promise<void> {
    await Promise.allSettled(this.underWay.values());
    await this.thread.stop();
  }

  /** The PDF of a paper; renders it at once when the job has not come to it yet. */
  async fileOf(paperId: string): Promise<StoredPaper> {
    const found = await this.storedFile(paperId);
    if (found !== null) return found;
    await this.render(paperId);
    const made = await this.storedFile(paperId);
    if (made === null) throw new NotFound('paper', paperId);
    return made;
  }

  /** Papers of a site, newest first, by key: those issued before `beforeId`. At most 200. */
  async page(siteId: string, beforeId: string | null, limit: number): Promise<readonly PaperLine[]> {
    const rows = await this.reader.sql<Omit<PaperLine, 'isVoid'> & { voidedBy: string | null }>`
      SELECT p."id", p."kind", p."number", p."subject_kind" AS "subjectKind", p."subject_id" AS "subjectId",
        p."issued_at" AS "issuedAt", f."sha256", p."voided_by" AS "voidedBy"
      FROM "paper" p LEFT JOIN "paper_file" f ON f."paper_id" = p."id"
      WHERE p."site_id" = ${siteId} AND p."id" < ${beforeId ?? '~'}
      ORDER BY p."id" DESC LIMIT ${Math.min(limit, 200)}`;
    return rows.map(({ voidedBy, ...row }) => ({ ...row, isVoid: voidedBy !== null }));
  }

  private async storedFile(paperId: string): Promise<StoredPaper | null> {
    const rows = await this.reader.sql<StoredRow>`
      SELECT f."bytes", f."sha256", p."kind", p."number", p."facts"
      FROM "paper_file" f JOIN "paper" p ON p."id" = f."paper_id" WHERE f."paper_id" = ${paperId}`;
    const row = onlyRow(rows);
    if (row === null) return null;
    const { bytes, sha256: hash, number, kind, facts } = row;
    return { bytes, sha256: hash, name: `${number ?? kind}.pdf`, language: paperLanguageOf(JSON.parse(facts)) };
  }
}
