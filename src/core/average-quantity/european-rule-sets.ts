import { from } from './evidence.js';
import { directivePlans, ukPlans } from './european-plans.js';
import type { RuleSet } from './rule-set.js';

/** The rules of the ℮ mark. The directive gives no share for its second rule: 2.5 % is how packers read it. */
export const directive: RuleSet = {
  id: 'eu-76-211',
  title: 'Directive 76/211/EEC',
  edition: { text: 'consolidated 2019', ...from('Article 1') },
  markets: ['eu', 'de'],
  scope: { fromMilligrams: 5_000, upToMilligrams: 10_000_000, ...from('Article 1') },
  shortBy: { table: 'directive', ...from('Annex I 2.4') },
  runRules: [
    { kind: 'mean', ...from('Annex I 1.1') },
    { kind: 'share', of: 'beyondT1', atMostPermille: 25, ...from('Annex I 1.2', 'memory') },
    { kind: 'count', of: 'beyondT2', atMost: 0, ...from('Annex I 1.3') },
  ],
  plans: directivePlans,
};

/** The average system of the United Kingdom: the same table, up to 25 kg. */
export const unitedKingdom: RuleSet = {
  id: 'uk-2006-659',
  title: 'The Weights and Measures (Packaged Goods) Regulations 2006 (SI 2006/659)',
  edition: { text: '2006', ...from('SI 2006/659') },
  markets: ['uk'],
  scope: { fromMilligrams: 5_000, upToMilligrams: 25_000_000, ...from('GOV.UK, Packaged goods') },
  shortBy: { table: 'directive', ...from('GOV.UK, Packaged goods') },
  runRules: [
    { kind: 'mean', ...from('packers’ rules', 'memory') },
    { kind: 'share', of: 'beyondT1', atMostPermille: 25, ...from('packers’ rules', 'memory') },
    { kind: 'count', of: 'beyondT2', atMost: 0, ...from('packers’ rules', 'memory') },
  ],
  plans: ukPlans,
};

/** What Germany asks at the time of production, and its own table for T2. It stands beside the directive. */
export const germany: RuleSet = {
  id: 'de-fpackv',
  title: 'Fertigpackungsverordnung (FPackV)',
  edition: { text: '2020', ...from('FPackV', 'memory') },
  markets: ['de'],
  scope: { fromMilligrams: 5_000, upToMilligrams: 10_000_000, ...from('section 9(3)') },
  shortBy: { table: 'fpackv', ...from('section 9(3) and 9(4)') },
  runRules: [
    { kind: 'mean', ...from('section 9', 'memory') },
    { kind: 'share', of: 'beyondT1', atMostPermille: 20, ...from('section 9(3)') },
    { kind: 'count', of: 'beyondT2', atMost: 0, ...from('section 9(4)') },
  ],
  plans: [],
};
