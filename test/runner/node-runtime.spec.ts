import { describe, expect, it } from '@jest/globals';
import { DataSource } from 'typeorm';
import type { Databases } from '../../src/platform/database/databases.js';
import { Refusal } from '../../src/platform/refusal.js';
import { freshPlace, openHouseAt } from '../support/house.js';

describe('what a spec and Jest’s expectations both speak of', () => {
  it.each([
    ['text', String],
    [7, Number],
    [['a'], Array],
    [new Map(), Map],
    [new Date(), Date],
    [Buffer.from('a'), Uint8Array],
    [Promise.resolve(), Promise],
    [new TypeError('no'), Error],
  ])('is of one kind: %p', (value, kind) => {
    expect(value).toEqual(expect.any(kind));
    expect({ value }).toStrictEqual({ value });
  });

  it('is told apart where it differs', () => {
    expect('7').not.toEqual(expect.any(Number));
    expect(new Map([['a', 1]])).not.toEqual(new Map([['a', 2]]));
    expect(new Error('one')).not.toEqual(new Error('other'));
    expect(() => JSON.parse('{') as unknown).toThrow(SyntaxError);
  });

  it('is loaded once: a class of the house and one of a package are those that the house itself uses', async () => {
    const place = await freshPlace();
    const house = await openHouseAt(place, {});
    const { writer }: Databases = house.databases;
    expect(writer).toBeInstanceOf(DataSource);
    await house.close();
    await place.remove();
    const { Refusal: again } = await import('../../src/platform/refusal.js');
    expect(again).toBe(Refusal);
  });

  it('shows a fault at its line of the source', () => {
    const [, line = ''] = /node-runtime\.spec\.ts:(\d+)/.exec(new Error('here').stack ?? '') ?? [];
    expect(line).toBe('41');
  });
});
