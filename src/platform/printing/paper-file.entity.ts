import { Entity } from 'typeorm';
import { BytesColumn, InstantColumn, RefColumn, WordColumn } from '../database/columns.js';
import { Fact } from '../database/fact-table.js';
import { Paper } from './paper.entity.js';

/** The PDF of a paper, exactly as it was made, and its hash. */
@Fact()
@Entity('paper_file')
export class PaperFile {
  @RefColumn(() => Paper, { primary: true })
  paperId!: string;

  @BytesColumn()
  bytes!: Buffer;

  /** SHA-256 of the bytes. */
  @WordColumn()
  sha256!: string;

  @InstantColumn()
  renderedAt!: string;
}
