import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import { RouteConfig } from '@nestjs/platform-fastify';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import type { Readable } from 'node:stream';
import { NotTaken } from '../refusal.js';
import { FilePart, FormParts } from './form-parts.js';

interface TakesFileConfig {
  readonly takesFile?: boolean;
}

/** The type of forms that carry a file. */
export const fileFormType = 'multipart/form-data';

/** States, beside a route, that its form brings one file as the last field. */
export const TakesFile = (): MethodDecorator => RouteConfig({ takesFile: true } satisfies TakesFileConfig);

/**
 * Lets the routes that say so take a form with a file. The form is handed over as soon as its file begins: who sends it,
 * and from which page, is looked at before the file is read.
 */
export function takeFiles(server: FastifyInstance): void {
  server.addContentTypeParser(fileFormType, async (request: FastifyRequest, payload: Readable) => {
    if ((request.routeOptions.config as TakesFileConfig).takesFile !== true) {
      throw Object.assign(new Error('no file is taken here'), { statusCode: 415 });
    }
    const boundary = /;\s*boundary="?([\w'()+,./:=? -]{1,70})"?\s*(?:;|$)/i.exec(request.headers['content-type'] ?? '');
    if (boundary?.[1] === undefined) throw Object.assign(new Error('no boundary'), { statusCode: 400 });
    try {
      const { fields, file } = await new FormParts(payload, boundary[1]).read();
      return { ...Object.fromEntries(fields), file };
    } catch {
      throw Object.assign(new Error('no form'), { statusCode: 400 });
    }
  });
}

/** The file of a form that brings one; it is taken out, so that the rest is checked as every form is. */
export const Brought = createParamDecorator((_: unknown, context: ExecutionContext): FilePart => {
  const request = context.switchToHttp().getRequest<FastifyRequest<{ Body: { file?: unknown } | undefined }>>();
  const file = request.body?.file;
  if (request.body !== undefined) delete request.body.file;
  if (file instanceof FilePart) return file;
  throw new NotTaken('bad-body', 'file-missing');
});
