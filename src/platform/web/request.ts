import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import type { Actor } from '../actor.js';
import { BadForm, NotPermitted, type SentenceFacts } from '../refusal.js';
import type { Language } from '../sentences/language.js';

/** What the shell of a page needs to know of who looks at it. */
export interface Viewer {
  readonly actor: Actor;
  readonly name: string;
  readonly siteName: string;
  readonly timeZone: string;
  readonly language: Language;
  readonly csrfToken: string;
  readonly path: string;
  /** What the last form brought about, said once on the page that follows it. */
  readonly said: Said | null;
  /** The device's code, on an enrolled one. */
  readonly deviceCode: string | null;
  /** How the person proved who they are. */
  readonly proof: 'password' | 'badge' | 'pin' | 'machine';
  /** The journal's last sequence when the page was made. */
  readonly journalSequence: number;
  /** What may interrupt the person, what stops first; absent where nobody looked. */
  readonly banners?: readonly ShownBanner[];
}

/** An open point that a page shows above all else. */
export interface ShownBanner {
  readonly pointId: string;
  /** Code of the sentence that says what is so and what to do. */
  readonly cause: string;
  readonly facts: SentenceFacts;
  readonly pointClass: 'stop' | 'act-soon';
  readonly withinMinutes: number;
  /** How many open points of the cause there are. */
  readonly pointCount: number;
  /** Where the thing is looked at. */
  readonly href: string | null;
}

/** A sentence for the next page: its code in the catalogue and what it is filled with. */
export interface Said {
  readonly code: string;
  readonly facts: SentenceFacts;
}

/** Why something cannot be taken: a code of the catalogue with its facts. */
export interface Barred {
  readonly code: string;
  readonly facts: SentenceFacts;
}

/** A request after the guard of `people` has looked at it. */
export interface HouseRequest extends FastifyRequest {
  actor?: Actor;
  viewer?: Viewer;
  deviceOffsetMilliseconds?: number | null;
  /** Whether who asked could still ask: an answer that lasts looks again. Absent where nobody is known. */
  stillHolds?: () => Promise<boolean>;
  /** SHA-256 of the session's cookie. */
  sessionHash?: string;
  /** The key of a plain form: it has no header to send one in. */
  formKey?: string;
  /** How far the page had seen the thing that its form changes. */
  seen?: { readonly subject: { readonly kind: string; readonly id: string }; readonly sequence: number };
  /** The mark of what was shown beforehand of what the form changes. */
  previewed?: string;
  /** Set for an entry that happened earlier: kept on a device, or written on paper. */
  happening?: {
    readonly how: 'queued' | 'paper';
    readonly at: string;
    readonly sheet: string | null;
    readonly row: number | null;
    readonly writtenBy: string | null;
  };
  /** Why an entry that happened earlier cannot be taken, known before it is looked at: it is kept for a person to see. */
  barred?: Barred | null;
}

const keyPattern = /^[A-Za-z0-9-]{8,64}$/;

const requestOf = (context: ExecutionContext): HouseRequest => context.switchToHttp().getRequest<HouseRequest>();

/** The person or device that asks. */
export const Acting = createParamDecorator((_: unknown, context: ExecutionContext): Actor => {
  const { actor } = requestOf(context);
  if (actor === undefined) throw new NotPermitted('not-signed-in');
  return actor;
});

/** The person who looks at a page. */
export const Looking = createParamDecorator((_: unknown, context: ExecutionContext): Viewer => {
  const { viewer } = requestOf(context);
  if (viewer === undefined) throw new NotPermitted('not-signed-in');
  return viewer;
});

/** Who asks for a change, by which route and key: what every command takes first (`Asked` of the journal). */
export const Asking = createParamDecorator((_: unknown, context: ExecutionContext) => askedOf(requestOf(context)));

/** Who asks what a change would do: nothing is recorded, so it needs no key. */
export const Trying = createParamDecorator((_: unknown, context: ExecutionContext) => {
  const request = requestOf(context);
  return { ...changeOf(request), key: null };
});

/** @throws {NotPermitted}, {BadForm} where it carries no key */
export function askedOf(request: HouseRequest) {
  return { ...changeOf(request), key: keyOf(request) };
}

function changeOf(request: HouseRequest) {
  if (request.actor === undefined) throw new NotPermitted('not-signed-in');
  const route = `${request.method} ${request.routeOptions.url ?? request.url}`;
  return {
    actor: request.actor,
    route,
    seen: request.seen ?? null,
    previewed: previewedOf(request),
    deviceOffsetMilliseconds: request.deviceOffsetMilliseconds ?? null,
    happening: request.happening ?? null,
  };
}

/** A page's form carries it in a field, JSON in a header. */
function previewedOf({ headers, previewed }: HouseRequest): string | null {
  const header = headers['preview-mark'];
  return previewed ?? (typeof header === 'string' ? header.trim() : null);
}

function keyOf(request: HouseRequest): string {
  const header = request.headers['idempotency-key'];
  const key = (typeof header === 'string' ? header : (request.formKey ?? '')).trim();
  if (keyPattern.test(key)) return key;
  throw new BadForm([{ field: 'Idempotency-Key', code: 'key-missing', facts: {} }]);
}
