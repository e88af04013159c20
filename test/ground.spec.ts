import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { openHouse, type TestHouse } from './support/house.js';

describe('the ground of the house', () => {
  let house: TestHouse;
  beforeAll(async () => {
    house = await openHouse();
  });
  afterAll(async () => {
    await house.close();
  });

  it('makes the schema that the entities describe, with nothing left to change', async () => {
    const log = await house.databases.writer.driver.createSchemaBuilder().log();
    expect(log.upQueries.map((query) => query.query)).toEqual([]);
  });
});
