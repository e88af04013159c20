import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { schemaText } from '../src/cli/schema-text.js';
import { openHouse, type TestHouse } from './support/house.js';

describe('docs/schema.sql', () => {
  let house: TestHouse;
  beforeAll(async () => {
    house = await openHouse();
  });
  afterAll(async () => {
    await house.close();
  });

  it('shows the tables, indexes and triggers that the migrations make on SQLite', async () => {
    if (house.databases.kind === 'postgres') return;
    const written = readFileSync(new URL('../docs/schema.sql', import.meta.url), 'utf8');
    expect(await schemaText(house.databases)).toBe(written);
    expect(written.match(/CREATE TRIGGER/g)?.length).toBeGreaterThan(200);
  });
});
