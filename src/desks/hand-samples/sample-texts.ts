import type { HandSampleReading } from '../../core/average-quantity/read-hand-sample.js';
import type { DueHandSample } from '../../fill-weight/hand-plan/due-hand-sample.js';
import { gramsText } from '../../fill-weight/weight-text.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';

/** What a sample says and what to do, in one line. */
export function whatToDo(reading: HandSampleReading, nominalMilligrams: number): string {
  const off = reading.meanMilligrams - nominalMilligrams;
  return say(`hand-sample-do-${reading.finding}`, {
    packs: reading.packCount,
    count: reading.finding === 'beyondT2' ? reading.beyondT2Count : reading.beyondT1Count,
    // Two places, so that what is short by ever so little is not said to be short by nothing.
    grams: gramsText(Math.abs(off), 2),
  });
}

/** When the next sample is due. */
export function sampleDueText({ plan, word, minutesLeft }: DueHandSample): string {
  return say(`hand-sample-now-${word}`, { count: plan.packCount, minutes: countText(Math.abs(minutesLeft)) });
}
