import { Inject, Injectable } from '@nestjs/common';
import { Clock } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { NotTaken } from '../../platform/refusal.js';
import { formPipe } from '../../platform/web/check-form.js';
import { InstantField } from '../../platform/web/fields.js';
import { ReceiveWeigherCheck, type WeigherCheckAnswer } from '../checks/receive-weigher-check.js';
import { WeigherCheckForm } from '../checks/weigher-check.form.js';
import { askedByMessage, senderCalled } from './sender-of-message.js';
import type { RawMessage } from './weight-message.js';

/** A check of some test packs is far smaller. Our own value, no source. */
const mostBytes = 65_536;

/** The check of the route, with what the header Device-Time says there. */
class CheckMessageForm extends WeigherCheckForm {
  @InstantField({ optional: true })
  sentAt?: string | null;
}

const pipe = formPipe();

/**
 * Takes the check that a message of MQTT brings: the JSON of the route. It is known by its sequence, so it has no other id.
 * Refusals: `mqtt-weigher-unknown`, `mqtt-not-allowed`, all of `ReceiveWeigherCheck`; what is no JSON is not taken.
 */
@Injectable()
export class ReceiveCheckMessage {
  constructor(
    private readonly clock: Clock,
    private readonly receiveCheck: ReceiveWeigherCheck,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  async execute({ weigher: code, payload }: RawMessage): Promise<WeigherCheckAnswer> {
    const weigher = await senderCalled(this.reader, code);
    const { length } = payload;
    if (length > mostBytes) throw new NotTaken('too-large', 'check-message-too-large', { most: mostBytes, length });
    const { sentAt, ...form } = await checkIn(payload);
    const asked = askedByMessage(weigher, { id: null, sentAt: sentAt ?? null, now: this.clock.now() });
    return this.receiveCheck.execute(asked, weigher, form);
  }
}

async function checkIn(payload: Uint8Array): Promise<CheckMessageForm> {
  const said = parsed(Buffer.from(payload.buffer, payload.byteOffset, payload.length).toString('utf8'));
  if (said === null || typeof said !== 'object' || Array.isArray(said))
    throw new NotTaken('bad-body', 'check-not-json');
  return (await pipe.transform(said, { type: 'body', metatype: CheckMessageForm })) as CheckMessageForm;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return null;
  }
}
