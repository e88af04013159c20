import { finished } from 'node:stream';
import type { FastifyReply } from 'fastify';
import type { HeldAnswer } from '../threads/shared-places.js';

/** What a route answers with: the bytes where they lie, given back when they have been sent or nobody waits for them any more. */
export function sendHeld(reply: FastifyReply, { bytes, giveBack }: HeldAnswer): Buffer {
  finished(reply.raw, () => {
    giveBack();
  });
  // Shared memory does not count as bytes to the server's framework: it would be written out as a list of numbers.
  const asItIs = ((sent: Buffer) => sent) as unknown as (sent: Buffer) => string;
  void reply.type('application/json; charset=utf-8').serializer(asItIs);
  return bytes;
}
