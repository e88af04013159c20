import { say } from '../../platform/sentences/sentences.js';
import type { JudgedMarket } from '../run-weights/judged-markets.js';

/** `European Union, United States`. */
export function marketsText(markets: readonly JudgedMarket[]): string {
  return markets.map((market) => say(`run-weights-market-${market}`)).join(', ');
}
