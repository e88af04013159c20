import { Inject, Injectable } from '@nestjs/common';
import type { Asked } from '../../journal/entry-draft.js';
import { RecordChange } from '../../journal/record-change.js';
import { sha256 } from '../../platform/canonical-text.js';
import { Clock } from '../../platform/clock.js';
import { READER, type ReadFrom } from '../../platform/database/reading.js';
import { NotTaken } from '../../platform/refusal.js';
import { ReadWeights } from '../incoming/read-weights.js';
import { refuseUnfinished } from '../incoming/refuse-unfinished.js';
import type { PackWeigherRow } from '../pack-weighers.js';
import { ReceiveWeights, type WeightsAnswer } from '../receive-weights.js';
import { askedByMessage, senderCalled } from './sender-of-message.js';
import { takeApart, type RawMessage, type WeightMessage } from './weight-message.js';

/** What became of a message that was taken. */
export interface MessageTaken {
  readonly message: string | null;
  readonly answer: WeightsAnswer;
}

/**
 * Takes the weights of a message of MQTT. The topic names the weigher, and whoever set it up said that it may send so.
 * A message that has an id and comes again gets the answer that it got before, unread.
 * Refusals: `mqtt-weigher-unknown`, `mqtt-not-allowed`, `key-used-for-other-content`; all of `ReceiveWeights`; what is
 * no message of weights is not taken.
 */
@Injectable()
export class ReceiveMessage {
  constructor(
    private readonly changes: RecordChange,
    private readonly clock: Clock,
    private readonly receiveWeights: ReceiveWeights,
    @Inject(READER) private readonly reader: ReadFrom,
  ) {}

  async execute(raw: RawMessage): Promise<MessageTaken> {
    const weigher = await senderCalled(this.reader, raw.weigher);
    const message = await takeApart(raw);
    const { message: id, sentAt } = message.head;
    const asked = askedByMessage(weigher, { id: id ?? null, sentAt: sentAt ?? null, now: this.clock.now() });
    const content = { payload: sha256(raw.payload) };
    const earlier = await this.changes.answered<WeightsAnswer>(asked, content);
    const answer = earlier === null ? await this.take(asked, { weigher, message, content }) : known(earlier);
    return { message: message.head.message ?? null, answer };
  }

  private take(asked: Asked, { weigher, message, content }: Taking): Promise<WeightsAnswer> {
    const { head, kind, lines } = message;
    const read = new ReadWeights({ kind });
    // A message whose last line has no end may have been cut off while it was written.
    refuseUnfinished(read, read.take(lines) ?? read.end(), { count: head.count ?? null, ends: 'newline' });
    if (read.lineCount === 0) throw new NotTaken('bad-body', 'message-empty');
    const { series, run, line } = head;
    return this.receiveWeights.execute(asked, {
      weigher,
      read,
      series: series ?? '1',
      run: run ?? null,
      line: line ?? null,
      skipsFaults: head.lines === 'skip',
      content,
    });
  }
}

interface Taking {
  readonly weigher: PackWeigherRow;
  readonly message: WeightMessage;
  readonly content: object;
}

/** What a message brought the first time it has brought before, the second time. */
function known(earlier: WeightsAnswer): WeightsAnswer {
  return { ...earlier, acceptedCount: 0, repeatedCount: earlier.repeatedCount + earlier.acceptedCount };
}
