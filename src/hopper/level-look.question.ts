import type { HeavyQuestion } from '../platform/database/heavy-question.js';
import { explainedLevel, type HopperLevel } from './hopper-level.js';
import type { PeriodRow } from './hopper-period-rows.js';
import { readHopperPeriod } from './hopper-periods.js';
import { lookedAt, type LastLook } from './level-estimate.js';

/** What a close look at a hopper period finds, and what was recorded by then. */
export interface LevelLook {
  readonly period: PeriodRow;
  readonly hopperCode: string;
  readonly level: HopperLevel;
  readonly looked: LastLook;
}

/** The close look at a hopper period: all of it, mass by mass. */
export const question: HeavyQuestion<{ readonly periodId: string }> = {
  url: import.meta.url,
  answer: async (from, { periodId }) => {
    const facts = await readHopperPeriod(from, periodId);
    const { period } = facts;
    const level = await explainedLevel(from, facts);
    const looked = await lookedAt(from, period, level);
    const look: LevelLook = { period, hopperCode: facts.hopper.code, level, looked };
    return JSON.stringify(look);
  },
};
