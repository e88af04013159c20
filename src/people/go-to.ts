import type { FastifyReply } from 'fastify';

/** After a form was taken, the browser goes on to a page: reloading it sends nothing again. */
export function goTo(reply: FastifyReply, path: string): null {
  void reply.status(303).header('Location', path);
  return null;
}
