import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { Validator } from '@seriousme/openapi-schema-validator';
import request from 'supertest';
import { openHouse, type TestHouse } from './support/house.js';

interface Described {
  readonly openapi: string;
  readonly paths: Record<string, Record<string, { summary?: string; tags?: string[]; requestBody?: unknown }>>;
  readonly components: { readonly schemas: Record<string, { properties?: Record<string, object> }> };
}

describe('the description of the JSON routes', () => {
  let house: TestHouse;
  let description: Described;

  beforeAll(async () => {
    house = await openHouse();
    const answer = await request(house.app.getHttpServer()).get('/api/openapi.json');
    expect(answer.status).toBe(200);
    description = answer.body as Described;
  });
  afterAll(async () => {
    await house.close();
  });

  it('is valid OpenAPI 3.1', async () => {
    expect(description.openapi).toBe('3.1.0');
    const found = await new Validator().validate(structuredClone(description) as never);
    expect(found).toMatchObject({ valid: true });
  });

  it('says of every route what it is for, and leaves no page in', () => {
    const routes = Object.entries(description.paths).flatMap(([path, methods]) =>
      Object.entries(methods).map(([method, route]) => ({ name: `${method} ${path}`, route })),
    );
    expect(routes.length).toBeGreaterThan(80);
    expect(routes.filter(({ route }) => (route.summary ?? '') === '').map(({ name }) => name)).toEqual([]);
    expect(Object.keys(description.paths).filter((path) => !path.startsWith('/api/'))).toEqual([]);
  });

  it('shows an example or a choice for most fields of the forms', () => {
    const fields = Object.values(description.components.schemas).flatMap((form) =>
      Object.values(form.properties ?? {}),
    );
    const shown = fields.filter(
      (field) => 'example' in field || 'enum' in field || 'format' in field || '$ref' in field,
    );
    expect(fields.length).toBeGreaterThan(150);
    expect(shown.length / fields.length).toBeGreaterThan(0.5);
  });
});
