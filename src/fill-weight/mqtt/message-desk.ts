import { Injectable, Logger } from '@nestjs/common';
import { BadForm, NotFound, NotTaken, Refusal } from '../../platform/refusal.js';
import { fieldOf, problemOf } from '../../platform/web/problem.filter.js';
import { MessagePoints } from './message-points.js';
import { ReceiveCheckMessage } from './receive-check-message.js';
import { ReceiveMessage, type MessageTaken } from './receive-message.js';
import type { RawMessage } from './weight-message.js';

/** What the sender is told: what was taken, or why nothing was. */
export type MessageAnswer = Readonly<Record<string, unknown>>;

/** After so many attempts a message that fails for no reason of its own is set aside, so that others have their turn. */
const mostAttempts = 8;

/**
 * Deals with one message to its end: its weights or its check are on disk, or a person will see that they are not. What fails because
 * the house cannot write now is answered with null, to be tried again.
 */
@Injectable()
export class MessageDesk {
  private readonly log = new Logger(MessageDesk.name);

  constructor(
    private readonly receive: ReceiveMessage,
    private readonly receiveCheck: ReceiveCheckMessage,
    private readonly points: MessagePoints,
  ) {}

  /** @returns what the sender is told; null where it must be tried again */
  async deal(raw: RawMessage, attempt: number): Promise<MessageAnswer | null> {
    try {
      if (raw.about === 'checks') return { ...(await this.receiveCheck.execute(raw)) };
      const taken = await this.receive.execute(raw);
      if (raw.isKept) await this.points.kept(raw.weigher);
      return answerTo(taken);
    } catch (error) {
      if (!isItsOwnFault(error) && attempt < mostAttempts) {
        this.log.error(error);
        return null;
      }
      return this.refuse(raw, error);
    }
  }

  /** Where not even the point can be written, the message is not done with. */
  private async refuse(raw: RawMessage, error: unknown): Promise<MessageAnswer | null> {
    const problem = problemOf(error);
    this.log.warn({ weigher: raw.weigher.slice(0, 40), type: problem.type, detail: problem.detail });
    try {
      await this.points.refused(raw, error);
    } catch (failure) {
      this.log.error(failure);
      return null;
    }
    return raw.about === 'checks'
      ? { sequence: sequenceOf(raw), ...problem }
      : { message: messageIdOf(raw), ...problem };
  }
}

function answerTo({ message, answer }: MessageTaken): MessageAnswer {
  return { message, ...answer, problems: answer.problems.map(fieldOf) };
}

/** It would be refused however often it came; what is only being recorded right now would not. */
function isItsOwnFault(error: unknown): boolean {
  if (error instanceof Refusal) return error.code !== 'still-being-recorded';
  return error instanceof BadForm || error instanceof NotTaken || error instanceof NotFound;
}

/** The id of a refused message, as far as it can be read. */
function messageIdOf({ payload, userProperties }: RawMessage): string | null {
  const property = userProperties?.['message'];
  if (typeof property === 'string') return property.slice(0, 64);
  const start = Buffer.from(payload.buffer, payload.byteOffset, Math.min(payload.length, 1000)).toString('utf8');
  return /^[^\n]*?"message"\s*:\s*"([A-Za-z0-9._:-]{1,64})"/.exec(start)?.[1] ?? null;
}

/** The sequence of a refused check, as far as it can be read. */
function sequenceOf({ payload }: RawMessage): number | null {
  const start = Buffer.from(payload.buffer, payload.byteOffset, Math.min(payload.length, 1000)).toString('utf8');
  const [, digits] = /"sequence"\s*:\s*(\d{1,15})\b/.exec(start) ?? [];
  return digits === undefined ? null : Number(digits);
}
