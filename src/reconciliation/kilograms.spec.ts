import { describe, expect, it } from '@jest/globals';
import { inConversation } from '../platform/sentences/language.js';
import { shortPercent, tenthsOfKilograms, uncertainKilograms } from './kilograms.js';

describe('figures of an account', () => {
  it.each([
    [0, '0 kg'],
    [9, '0.009 kg'],
    [30, '0.03 kg'],
    [612, '0.61 kg'],
    [995, '1 kg'],
    [24_537, '25 kg'],
    [240_838, '240 kg'],
    [1_249_999, '1\u202f200 kg'],
  ])('show an uncertainty of %d g by two digits: %s', (grams, text) => {
    expect(uncertainKilograms(grams)).toBe(text);
  });

  it('show a limit to a tenth and a share to a hundredth, with the decimals of the paper that they are on', () => {
    const shown = () => [tenthsOfKilograms(564_430), shortPercent('-0.0908')];
    expect(shown()).toEqual(['564.4 kg', '\u22120.09']);
    expect(inConversation(shown, 'es', true)).toEqual(['564,4 kg', '\u22120,09']);
  });
});
