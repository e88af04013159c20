import { ChoiceField } from '../../platform/web/fields.js';
import { judgedMarkets, type JudgedMarket } from './judged-markets.js';

/** Under which market's rules a run is shown first. */
export class RunWeightsQuery {
  @ChoiceField(judgedMarkets, { optional: true, says: 'Where the packs are sold; absent: as set up for the format' })
  market?: JudgedMarket | null;
}
