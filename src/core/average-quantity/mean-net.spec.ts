import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { assumedMeanNet, meanNetFromHandSample } from './mean-net.js';

describe('the mean net from packs weighed by hand', () => {
  it('lies between the 99.9 % interval widened by the error of the scale', () => {
    // By hand: mean 20010, s 16.32993, t(0.9995; 3) 12.924 (Federighi 1959): 12.924 · 16.32993/2 + 10 = 115.524 decigrams.
    const net = meanNetFromHandSample({
      netDecigrams: [20010, 20030, 19990, 20010],
      scaleMaximumPermissibleErrorDecigrams: 10,
    });
    expect(net).toMatchObject({ meanMilligrams: 2_001_000, packCount: 4, basis: 'measured' });
    expect(net.lowerMilligrams).toBe(1_989_447);
    expect(net.upperMilligrams).toBe(2_012_553);
    expect(net.standardMilligrams).toBeCloseTo(816.4966, 3);
  });

  it('is as sure as the scale where all packs weigh the same', () => {
    const net = meanNetFromHandSample({
      netDecigrams: [10000, 10000, 10000],
      scaleMaximumPermissibleErrorDecigrams: 5,
    });
    expect(net).toMatchObject({ lowerMilligrams: 999_500, meanMilligrams: 1_000_000, upperMilligrams: 1_000_500 });
  });

  it('is very wide for two packs, and does not fall below nothing', () => {
    const net = meanNetFromHandSample({ netDecigrams: [9990, 10020], scaleMaximumPermissibleErrorDecigrams: 0 });
    expect(net.upperMilligrams).toBeGreaterThan(1_900_000);
    expect(net.lowerMilligrams).toBe(45_571);
    const wider = meanNetFromHandSample({ netDecigrams: [9900, 10100], scaleMaximumPermissibleErrorDecigrams: 0 });
    expect(wider.lowerMilligrams).toBe(0);
  });

  it.each([
    [[10000], 5],
    [[], 5],
    [[10000, 0], 5],
    [[10000, 10000.5], 5],
    [[10000, 10001], -1],
    [[10000, 10001], NaN],
    [[10000, 10001], Infinity],
  ])('refuses nets %j with a scale error of %d', (netDecigrams, scaleMaximumPermissibleErrorDecigrams) => {
    expect(() => meanNetFromHandSample({ netDecigrams, scaleMaximumPermissibleErrorDecigrams })).toThrow(RangeError);
  });

  it('always holds its own mean, and a worse scale never narrows it', () => {
    const nets = fc.array(fc.integer({ min: 9_000, max: 11_000 }), { minLength: 2, maxLength: 60 });
    fc.assert(
      fc.property(nets, fc.integer({ min: 0, max: 50 }), (netDecigrams, scaleError) => {
        const net = meanNetFromHandSample({ netDecigrams, scaleMaximumPermissibleErrorDecigrams: scaleError });
        const worse = meanNetFromHandSample({ netDecigrams, scaleMaximumPermissibleErrorDecigrams: scaleError + 1 });
        expect(net.lowerMilligrams).toBeLessThanOrEqual(net.meanMilligrams);
        expect(net.upperMilligrams).toBeGreaterThanOrEqual(net.meanMilligrams);
        expect(worse.lowerMilligrams).toBeLessThanOrEqual(net.lowerMilligrams);
        expect(worse.upperMilligrams).toBeGreaterThan(net.upperMilligrams);
      }),
    );
  });
});

describe('the mean net that nobody measured', () => {
  it('is the nominal quantity with the limits of the format, and says that it is assumed', () => {
    const net = assumedMeanNet({ nominalMilligrams: 2_000_000, lowerPermille: 10, upperPermille: 20 });
    expect(net).toMatchObject({
      meanMilligrams: 2_000_000,
      lowerMilligrams: 1_980_000,
      upperMilligrams: 2_040_000,
      packCount: 0,
      basis: 'assumed',
    });
    expect(net.standardMilligrams).toBeCloseTo(60_000 / Math.sqrt(12), 9);
  });

  it('rounds its limits outward', () => {
    const net = assumedMeanNet({ nominalMilligrams: 999, lowerPermille: 1, upperPermille: 1 });
    expect(net).toMatchObject({ lowerMilligrams: 998, upperMilligrams: 1_000 });
    const uneven = assumedMeanNet({ nominalMilligrams: 1_500, lowerPermille: 3, upperPermille: 3 });
    expect(uneven).toMatchObject({ lowerMilligrams: 1_495, upperMilligrams: 1_505 });
  });

  it.each([
    { nominalMilligrams: 0, lowerPermille: 10, upperPermille: 10 },
    { nominalMilligrams: 10.5, lowerPermille: 10, upperPermille: 10 },
    { nominalMilligrams: 1000, lowerPermille: -1, upperPermille: 10 },
    { nominalMilligrams: 1000, lowerPermille: 1001, upperPermille: 10 },
    { nominalMilligrams: 1000, lowerPermille: 1, upperPermille: -1 },
    { nominalMilligrams: 1000, lowerPermille: 2.5, upperPermille: 1 },
    { nominalMilligrams: 1000, lowerPermille: 1, upperPermille: NaN },
  ])('refuses %j', (assumed) => {
    expect(() => assumedMeanNet(assumed)).toThrow(RangeError);
  });
});
