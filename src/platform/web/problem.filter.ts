import {
  BadRequestException,
  Catch,
  HttpException,
  Logger,
  type ArgumentsHost,
  type ExceptionFilter,
} from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import {
  BadForm,
  NotFound,
  NotPermitted,
  NotTaken,
  Refusal,
  type FieldProblem,
  type SentenceFacts,
} from '../refusal.js';
import { say } from '../sentences/sentences.js';
import type { Problem, ProblemField } from './problem.js';
import { problemPage } from './problem.page.js';
import { renderPage } from './render-page.js';
import type { HouseRequest } from './request.js';

/** The one place that turns what went wrong into HTTP: problem documents under /api, pages elsewhere. */
@Catch()
export class ProblemFilter implements ExceptionFilter {
  private readonly log = new Logger(ProblemFilter.name);

  async catch(error: unknown, host: ArgumentsHost): Promise<void> {
    const request = host.switchToHttp().getRequest<HouseRequest>();
    const reply = host.switchToHttp().getResponse<FastifyReply>();
    const problem = problemOf(error);
    if (problem.status === 500) this.log.error(error instanceof Error ? (error.stack ?? error.message) : error);
    if (reply.sent || reply.raw.headersSent) return;
    if (error instanceof NotTaken && error.why === 'busy') void reply.header('Retry-After', String(retryAfterSeconds));
    if (wantsPage(request)) await this.answerWithPage(request, reply, problem);
    else await reply.status(problem.status).type('application/problem+json').send(JSON.stringify(problem));
  }

  private async answerWithPage(request: HouseRequest, reply: FastifyReply, problem: Problem): Promise<void> {
    if (problem.type === 'problem:not-signed-in' && request.method === 'GET') {
      await reply
        .status(303)
        .header('Location', `/sign-in?next=${encodeURIComponent(request.url)}`)
        .send();
      return;
    }
    await reply
      .status(problem.status)
      .type('text/html; charset=utf-8')
      .send(renderPage(problemPage({ problem, viewer: request.viewer ?? null })));
  }
}

/** A batch that is in hand is written within about so long. Our own value, no source. */
const retryAfterSeconds = 2;

function wantsPage(request: HouseRequest): boolean {
  if (request.url.startsWith('/api')) return false;
  return (request.headers.accept ?? '').includes('text/html');
}

/** Who asks did not show who they are. */
const unproven: ReadonlySet<string> = new Set(['not-signed-in', 'queue-proof-not-known']);

/** What went wrong as a problem document; anything unknown is the server's fault. */
export function problemOf(error: unknown): Problem {
  if (error instanceof Refusal) return { ...problem(409, error.code, error.facts), facts: error.facts };
  if (error instanceof NotFound)
    return problem(404, 'not-found', { kind: say(error.kind), asked: error.asked.slice(0, 60) });
  if (error instanceof NotPermitted) return problem(unproven.has(error.code) ? 401 : 403, error.code);
  if (error instanceof BadForm) {
    const facts = error.code === 'bad-form' ? {} : { facts: error.facts };
    return { ...problem(422, error.code, error.facts), ...facts, fields: error.problems.map(fieldOf) };
  }
  if (error instanceof NotTaken) return problem(notTakenStatus[error.why], error.code, error.facts);
  if (isOfPipe(error)) return unreadAddress();
  if (error instanceof HttpException) return httpProblem(error.getStatus());
  return httpProblem(statusOf(error));
}

/** A part of the address is no id. A body that is no JSON comes with the same status, but not from a pipe. */
function isOfPipe(error: unknown): boolean {
  return error instanceof BadRequestException && error.message.startsWith('Validation failed');
}

const notTakenStatus = { 'bad-body': 400, 'too-large': 413, 'wrong-type': 415, busy: 429 } as const;

/** One field's fault as a problem document names it. */
export function fieldOf({ line, field, code, facts }: FieldProblem): ProblemField {
  return { ...(line === undefined ? {} : { line }), field, type: `problem:${code}`, detail: say(code, facts) };
}

function problem(status: number, code: string, facts: SentenceFacts = {}): Problem {
  return { type: `problem:${code}`, title: code.replaceAll('-', ' '), status, detail: say(code, facts) };
}

function httpProblem(status: number): Problem {
  if (status === 404) return problem(404, 'no-such-page');
  if (status === 413) return problem(413, 'body-too-large');
  if (status === 429) return problem(429, 'too-many-requests');
  if (status === 415 || status === 400) return problem(status, 'body-not-read', { kind: 'JSON' });
  if (status === 503) return problem(503, 'server-fault');
  return status >= 400 && status < 500 ? problem(status, 'bad-form') : problem(500, 'server-fault');
}

/** Fastify's own refusals (a body too large, JSON that is none, an address that cannot be read) carry a status. */
function statusOf(error: unknown): number {
  const status = (error as { statusCode?: unknown } | null)?.statusCode;
  return typeof status === 'number' ? status : 500;
}

function unreadAddress(): Problem {
  return problem(400, 'address-not-read');
}

/** An address that the server cannot even take apart reaches no filter: it is answered here, without a page. */
export function answerUnreadAddress(reply: FastifyReply): void {
  const { status, ...rest } = unreadAddress();
  void reply
    .status(status)
    .type('application/problem+json')
    .send(JSON.stringify({ ...rest, status }));
}
