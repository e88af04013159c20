import { Injectable, type OnModuleInit } from '@nestjs/common';
import { DecisionSubjects } from '../disposition/decision-subjects.js';
import { findPallet } from './pallet-list.js';

/** Quality decides on pallets, and stands before them: so this room says how a pallet is found. */
@Injectable()
export class PalletForDecision implements OnModuleInit {
  constructor(private readonly subjects: DecisionSubjects) {}

  onModuleInit(): void {
    this.subjects.add('pallet', async (from, siteId, text) => {
      const { id, sscc } = await findPallet(from, siteId, text);
      return { id, label: sscc };
    });
  }
}
