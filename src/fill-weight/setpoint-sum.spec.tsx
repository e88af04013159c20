import { describe, expect, it } from '@jest/globals';
import { render } from 'preact-render-to-string';
import { shortPackLimits } from '../core/average-quantity/tolerable-negative-error.js';
import { adviseSetpoint, monthlyChange, type SetpointFacts } from '../core/setpoint/advise-setpoint.js';
import { fillRuleNames } from '../core/setpoint/lowest-mean.js';
import { hasSentence } from '../platform/sentences/sentences.js';
import './setpoint.sentences.es.js';
import './setpoint.sentences.js';
import { SetpointSum } from './setpoint-sum.js';
import './weight-pictures.sentences.js';

const asked: SetpointFacts = {
  rules: {
    nominalMilligrams: 1_000_000,
    ...shortPackLimits(1_000_000),
    shareBeyondT1: 0.025,
    shareBeyondT2: 0.0001,
  },
  sigmaMilligrams: 8_000,
  setByPackCount: 50,
  driftSigmaMilligrams: 1_500,
  tareLimitMilligrams: 300,
  scaleLimitMilligrams: 500,
  stepMilligrams: 500,
  riskPerLot: 0.05,
};
const advice = adviseSetpoint(asked);

function page(currentMilligrams: number, isPriced = true, currency: string | null = null): string {
  const change = monthlyChange({
    nominalMilligrams: 1_000_000,
    currentMilligrams,
    advisedMilligrams: advice.setpointMilligrams,
    packsPerMonth: 1_200_000,
    pricePerKilogram: 0.5,
  });
  return render(<SetpointSum of={{ asked, advice, change, isPriced, currency }} />).replaceAll(/[\u202f\u00a0]/g, ' ');
}

describe('the advised setpoint on a page', () => {
  it('shows its sum, so that it can be added up by hand', () => {
    const cells = [...page(1_008_000).matchAll(/<td class="number">([^<]*)<\/td>/g)].map(([, grams = '']) =>
      Number(grams.replaceAll(' ', '')),
    );
    expect(cells).toEqual([1000.68, 3.09, 0.3, 0.5, 0.43, 1005]);
    expect(cells.slice(0, -1).reduce((sum, grams) => sum + grams, 0)).toBeCloseTo(1005, 6);
  });

  it('states its risk, rounded up, and what is not in it', () => {
    const text = page(1_008_000);
    expect(text).toMatch(/In at most 3\.1 % of lots .* \(5\.0 % were asked for\)/);
    expect(text).toContain('1.86 g from the packs weighed and 2.47 g from drift, 3.09 g together');
    expect(text).toContain('Not in this risk');
    expect(text).toContain('The rule of packs beyond T1 asks for most');
  });

  it('says what it saves, or that it takes more', () => {
    expect(page(1_008_000)).toContain(
      'gives away 9 600 kg net a month, worth 4 800; this setting would save 3 600 kg, worth 1 800.',
    );
    expect(page(1_008_000, true, 'EUR')).toContain(
      'worth 4 800 EUR; this setting would save 3 600 kg, worth 1 800 EUR.',
    );
    expect(page(1_003_000)).toContain('this setting takes 2 400 kg more, worth 1 200, because');
    expect(page(1_008_000, false)).toContain('gives away 9 600 kg net a month; this setting would save 3 600 kg.');
    expect(page(1_003_000, false)).toContain('3 600 kg net a month; this setting takes 2 400 kg more, because');
    expect(page(999_000)).toContain(
      'hold 1 200 kg less a month than they say, worth 600; this setting takes 7 200 kg more, worth 3 600.',
    );
    expect(page(999_000, false)).toContain(
      'hold 1 200 kg less a month than they say; this setting takes 7 200 kg more.',
    );
  });

  it('has words for every term and every rule, in both languages', () => {
    const codes = [
      ...advice.terms.map(({ name }) => `setpoint-${name}`),
      ...fillRuleNames.map((name) => `setpoint-binds-${name}`),
      ...['saves', 'costs', 'short'].flatMap((now) => [`setpoint-${now}`, `setpoint-${now}-unpriced`]),
    ];
    expect(codes).toHaveLength(14);
    expect(codes.filter((code) => !hasSentence(code) || !hasSentence(code, 'es'))).toEqual([]);
  });
});
