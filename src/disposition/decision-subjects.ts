import { Injectable } from '@nestjs/common';
import type { ReadFrom } from '../platform/database/reading.js';
import { NotFound } from '../platform/refusal.js';

/** What a decision is about. */
export interface DecisionSubject {
  readonly id: string;
  /** What people call it: a bag's number, a lot's code, a pallet's SSCC. */
  readonly label: string;
}

/** Finds a thing of a site by what was typed; throws `NotFound` where there is none. */
export type FindSubject = (from: ReadFrom, siteId: string, text: string) => Promise<DecisionSubject>;

/** Later rooms add the finders of their own things, since quality decides on these too and stands before them. */
@Injectable()
export class DecisionSubjects {
  private readonly finders = new Map<'lot' | 'pallet', FindSubject>();

  add(kind: 'lot' | 'pallet', find: FindSubject): void {
    if (this.finders.has(kind)) throw new Error(`two finders for decisions on a ${kind}`);
    this.finders.set(kind, find);
  }

  /** @throws {NotFound} with the kind */
  async find(
    from: ReadFrom,
    siteId: string,
    asked: { kind: 'lot' | 'pallet'; text: string },
  ): Promise<DecisionSubject> {
    const finder = this.finders.get(asked.kind);
    if (finder === undefined) throw new NotFound(asked.kind, asked.text);
    return finder(from, siteId, asked.text);
  }
}
