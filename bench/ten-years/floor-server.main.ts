import fastify from 'fastify';
import { openBare, type BareStatement } from './recorded-view.js';

/** What the floor server is told: an answer, and the statements that its rows come from. */
export interface FloorCase {
  readonly statements: readonly BareStatement[];
  readonly answer: unknown;
}

/**
 * The floor of the ten years' bench: the same rows by the bare driver, and the same JSON through a bare server. It is
 * told its cases by its parent and asked for them by their place.
 */
const bare = openBare({
  dataFolder: process.env['DATA_FOLDER'] ?? '',
  databaseUrl: process.env['DATABASE_URL'] ?? null,
});
const cases: FloorCase[] = [];
const server = fastify({ logger: false });

server.get<{ Params: { place: string } }>('/:place', async (request) => {
  const asked = cases[Number(request.params.place)];
  for (const statement of asked?.statements ?? []) await bare.run(statement);
  return asked?.answer ?? null;
});

process.on('message', (told: FloorCase) => {
  cases.push(told);
  process.send?.(cases.length - 1);
});
const address = await server.listen({ port: 0, host: '127.0.0.1' });
process.send?.(address);
