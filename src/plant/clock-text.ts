import { say } from '../platform/sentences/sentences.js';
import type { CoderClockReading } from './plant-rows.js';

/** How a coder's clock stands against the plant's. */
export function clockSentence({ offsetSeconds, uncertaintySeconds }: CoderClockReading): string {
  const facts = { seconds: Math.abs(offsetSeconds), uncertainty: uncertaintySeconds };
  if (offsetSeconds === 0) return say('plant-clock-right', facts);
  return say(offsetSeconds > 0 ? 'plant-clock-ahead' : 'plant-clock-behind', facts);
}
