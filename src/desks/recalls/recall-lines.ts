import type { ReadFrom } from '../../platform/database/reading.js';
import { figuresOfText, shareText } from '../../recalls/frozen-figures.js';
import { figuresOfRecall } from '../../recalls/recall-figures.js';
import { signingOf, type RecallRow } from '../../recalls/recalls.js';

/** A recall as it is listed: how far it has come. */
export interface RecallLine {
  readonly recall: RecallRow;
  /** Of packs. */
  readonly accountedPercent: string | null;
  readonly respondedCount: number;
  readonly customerCount: number;
}

/** As signed; as the records stand while one is open. */
export async function recallLines(from: ReadFrom, recalls: readonly RecallRow[]): Promise<readonly RecallLine[]> {
  const lines: RecallLine[] = [];
  for (const recall of recalls) {
    const signing = await signingOf(from, recall.id);
    if (signing !== null) {
      const { packs, customers, respondedCount } = figuresOfText(signing.figures);
      const { accountedPercent } = packs;
      lines.push({ recall, accountedPercent, respondedCount, customerCount: customers.length });
      continue;
    }
    const { packs, customers, respondedCount } = await figuresOfRecall(from, recall);
    const accountedPercent = shareText(packs.accountedPercent);
    lines.push({ recall, accountedPercent, respondedCount, customerCount: customers.length });
  }
  return lines;
}
