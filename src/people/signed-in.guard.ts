import { Inject, Injectable, SetMetadata, type CanActivate, type ExecutionContext } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import type { FastifyReply } from 'fastify';
import { mayDo, permissionKey, queueKey, type Permission } from '../platform/actor.js';
import { CONFIG, type Config } from '../platform/config.js';
import { NotPermitted, Refusal } from '../platform/refusal.js';
import { fileFormType } from '../platform/web/brought-file.js';
import { followLanguage } from '../platform/web/language-asked.js';
import type { HouseRequest } from '../platform/web/request.js';
import { KnowWhoAsks } from './know-who-asks.js';
import { SignInPages } from './sign-in-pages.js';
import { QueueGate, queueProofOf } from './queue-gate.js';
import { isCsrfToken } from './sessions.js';
import type { SignedIn } from './who-asks.js';

const openBeforeChangeKey = 'packthread:open-before-password-change';
const signInKey = 'packthread:sign-in';

/** States, beside a route, that a person with a one-time password may use it. */
export const OpenBeforePasswordChange = (): MethodDecorator => SetMetadata(openBeforeChangeKey, true);

/** States, beside a route, that it signs in: its form comes before any session, so its origin is looked at instead. */
export const SignsIn = (): MethodDecorator => SetMetadata(signInKey, true);

/** Stands before every route: who asks, may they, and was the form made here. */
@Injectable()
export class SignedInGuard implements CanActivate {
  constructor(
    private readonly reflector: Reflector,
    private readonly who: KnowWhoAsks,
    private readonly queueGate: QueueGate,
    private readonly pages: SignInPages,
    @Inject(CONFIG) private readonly config: Config,
  ) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const request = context.switchToHttp().getRequest<HouseRequest>();
    const reply = context.switchToHttp().getResponse<FastifyReply>();
    const asks = <Stated>(key: string): Stated | undefined =>
      this.reflector.getAllAndOverride<Stated | undefined>(key, [context.getHandler(), context.getClass()]);
    const token = takeFormTokens(request);
    this.who.compareClocks(request);
    const permission = asks<Permission | 'anyone'>(permissionKey);
    const queueProof = queueProofOf(request);
    if (queueProof !== null) {
      const mayBeQueued = asks<boolean>(queueKey) === true;
      await this.queueGate.letIn(request, queueProof, { mayBeQueued, permission });
      return true;
    }
    const session = await this.who.look(request);
    // On a shared tablet nobody steps back into the pages of the person before.
    if (session !== null) {
      void reply.header('Cache-Control', 'no-store');
      followLanguage(request, reply, { config: this.config, language: session.language });
    }
    if (isUnsafe(request)) refuseForeignForm(request, { session, token, signsIn: asks<boolean>(signInKey) === true });
    const isLost = isUnsafe(request) && request.actor === undefined && permission !== 'anyone' && isFromHere(request);
    if (isLost && (await this.pages.carryOn(request, reply))) return false;
    refuseUnlessPermitted(request, permission);
    if (session?.mustChangePassword !== true || asks<boolean>(openBeforeChangeKey) === true) return true;
    return leadToPasswordChange(request, reply);
  }
}

function isUnsafe(request: HouseRequest): boolean {
  return !['GET', 'HEAD', 'OPTIONS'].includes(request.method);
}

/** The tokens that a form carries are the house's own: they are taken out before the form is checked. */
function takeFormTokens(request: HouseRequest): unknown {
  const header = request.headers['x-csrf-token'];
  const body = request.body as Record<string, unknown> | null | undefined;
  if (body === null || typeof body !== 'object' || Array.isArray(body)) return header;
  const { csrf, formKey, seen, previewed } = body;
  delete body['csrf'];
  if (typeof formKey === 'string' && isPlainForm(request)) {
    request.formKey = formKey;
    delete body['formKey'];
    takeSeen(request, body, seen);
    delete body['previewed'];
    if (typeof previewed === 'string' && previewed !== '') request.previewed = previewed;
  }
  return csrf ?? header;
}

/** How far the page had seen its subject: `kind:id:sequence`. */
function takeSeen(request: HouseRequest, body: Record<string, unknown>, seen: unknown): void {
  const [, kind, id, sequence] =
    /^([a-z-]{1,40}):([\w-]{1,64}):(\d{1,15})$/.exec(typeof seen === 'string' ? seen : '') ?? [];
  if (kind === undefined || id === undefined) return;
  request.seen = { subject: { kind, id }, sequence: Number(sequence) };
  delete body['seen'];
}

function isPlainForm(request: HouseRequest): boolean {
  const type = request.headers['content-type'] ?? '';
  return type.startsWith('application/x-www-form-urlencoded') || type.startsWith(fileFormType);
}

interface FormOrigin {
  readonly session: SignedIn | null;
  readonly token: unknown;
  readonly signsIn: boolean;
}

function refuseForeignForm(request: HouseRequest, { session, token, signsIn }: FormOrigin): void {
  if (session !== null && !signsIn) {
    if (!isCsrfToken(session.csrfSecret, token)) throw new NotPermitted('form-not-ours');
    return;
  }
  if (signsIn && !isFromHere(request)) throw new NotPermitted('form-not-ours');
}

/** Browsers say where a form comes from; what says nothing is no browser, and carries nobody's cookies. */
function isFromHere(request: HouseRequest): boolean {
  const site = request.headers['sec-fetch-site'];
  if (site !== undefined) return site === 'same-origin' || site === 'none';
  const { origin } = request.headers;
  if (origin === undefined) return true;
  return URL.canParse(origin) && new URL(origin).host === request.host;
}

function refuseUnlessPermitted(request: HouseRequest, permission: Permission | 'anyone' | undefined): void {
  if (permission === 'anyone') return;
  if (request.actor === undefined) throw new NotPermitted('not-signed-in');
  if (permission === undefined || !mayDo(request.actor.roles, permission)) throw new NotPermitted('not-permitted');
}

async function leadToPasswordChange(request: HouseRequest, reply: FastifyReply): Promise<boolean> {
  const wantsPage = request.method === 'GET' && (request.headers.accept ?? '').includes('text/html');
  if (request.url.startsWith('/api') || !wantsPage) throw new Refusal('password-change-needed');
  await reply.status(303).header('Location', '/me').send();
  return false;
}
