import { Injectable, type OnModuleInit } from '@nestjs/common';
import { DecisionSubjects, type DecisionSubject } from '../disposition/decision-subjects.js';
import { isId } from '../platform/is-id.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { NotFound, Refusal } from '../platform/refusal.js';
import { findLots, lotOf } from './packing-runs.js';

/** Quality decides on lots, and stands before packing: so packing says how a lot is found. */
@Injectable()
export class LotForDecision implements OnModuleInit {
  constructor(private readonly subjects: DecisionSubjects) {}

  onModuleInit(): void {
    this.subjects.add('lot', findLotToDecide);
  }
}

/**
 * @throws {NotFound} `lot`
 * @throws {Refusal} `several-lots` where the code is printed on packs of several formats
 */
async function findLotToDecide(from: ReadFrom, siteId: string, text: string): Promise<DecisionSubject> {
  const found = isId(text) ? [await lotOf(from, text)] : await findLots(from, siteId, text);
  const lots = found.filter((lot) => lot.siteId === siteId);
  const [only] = lots;
  if (only === undefined) throw new NotFound('lot', text);
  if (lots.length > 1) throw new Refusal('several-lots', { code: text, count: lots.length });
  return { id: only.id, label: only.code };
}
