import { Inject, Injectable, Logger, type BeforeApplicationShutdown } from '@nestjs/common';
import { setTimeout as wait } from 'node:timers/promises';
import type { IPublishPacket, MqttClient } from 'mqtt';
import { Clock, type Instant } from '../../platform/clock.js';
import { CONFIG, type Config } from '../../platform/config.js';
import type { MqttSettings } from '../../platform/mqtt-settings.js';
import { clientOptions, hostOf, partsOfTopic, topicEnds } from './client-options.js';
import { MessageDesk, type MessageAnswer } from './message-desk.js';
import { MessagePoints } from './message-points.js';
import { mqttLibrary } from './mqtt-library.js';
import type { RawMessage } from './weight-message.js';

/** How the line to the broker stands, for people to see. */
export interface LineStanding {
  /** The topics that are listened to, that of weights first; null: MQTT is off. */
  readonly topics: readonly string[] | null;
  readonly host: string | null;
  readonly isConnected: boolean;
  readonly since: Instant | null;
}

/** So long the broker may be away before somebody is asked to look. Our own value, no source. */
const patienceMilliseconds = 5 * 60_000;
const longestPauseMilliseconds = 30_000;

/**
 * The line to the broker. One message at a time: it is acknowledged once its weights are on disk or a person will see why
 * they are not, so the broker keeps what comes while the server is down.
 */
@Injectable()
export class MqttLine implements BeforeApplicationShutdown {
  private readonly log = new Logger(MqttLine.name);
  private readonly settings: MqttSettings | null;
  private client: MqttClient | null = null;
  private since: Instant | null = null;
  /** Counts connections: what was handed over by an earlier one is handed over again by the next. */
  private connection = 0;
  private inHand: Promise<void> = Promise.resolve();
  private patience: NodeJS.Timeout | null = null;

  constructor(
    @Inject(CONFIG) config: Config,
    private readonly clock: Clock,
    private readonly desk: MessageDesk,
    private readonly points: MessagePoints,
  ) {
    this.settings = config.mqtt;
  }

  get standing(): LineStanding {
    const { settings } = this;
    if (settings === null) return { topics: null, host: null, isConnected: false, since: null };
    const isConnected = this.client?.connected ?? false;
    return { topics: topicsOf(settings), host: hostOf(settings), isConnected, since: this.since };
  }

  /** Connects, where the settings name a broker, and stays connected. */
  start(patience = patienceMilliseconds): void {
    if (this.settings === null || this.client !== null) return;
    const { settings } = this;
    const client = mqttLibrary().connect(settings.url, clientOptions(settings));
    this.client = client;
    this.lose(patience);
    client.handleMessage = (packet, done) => {
      this.take(client, packet, done);
    };
    client.on('connect', () => {
      this.connection += 1;
      this.find(client, settings);
    });
    client.on('close', () => {
      this.connection += 1;
      this.lose(patience);
    });
    client.on('error', (error) => {
      this.log.warn({ broker: hostOf(settings), error: error.message });
    });
  }

  /** What is in hand is finished and acknowledged; all else stays with the broker. */
  async beforeApplicationShutdown(): Promise<void> {
    const { client } = this;
    this.client = null;
    if (this.patience !== null) clearTimeout(this.patience);
    if (client === null) return;
    await this.inHand;
    this.connection += 1;
    // Answers to senders may be on their way; they are told again when they send again.
    await Promise.race([client.endAsync(), wait(1000, null, { ref: false })]);
    await client.endAsync(true).catch(() => undefined);
  }

  private find(client: MqttClient, settings: MqttSettings): void {
    this.since = this.clock.now();
    if (this.patience !== null) clearTimeout(this.patience);
    this.patience = null;
    // Retained messages come with a new subscription only, where the broker can tell.
    client.subscribe(topicsOf(settings), { qos: 1, rh: 1 }, (error, granted) => {
      if (this.client === null) return;
      if (error === null && granted?.every(({ qos }) => qos <= 2) === true) {
        this.tell(() => this.points.broker(false, {}));
        return;
      }
      this.log.error({ broker: hostOf(settings), topics: topicsOf(settings), error: error?.message ?? 'refused' });
      this.tell(() => this.points.broker(true, { host: hostOf(settings), since: this.clock.now() }));
    });
  }

  private lose(patience: number): void {
    if (this.client === null || this.patience !== null) return;
    const { settings } = this;
    const since = this.clock.now();
    this.since = since;
    this.patience = setTimeout(() => {
      this.tell(() => this.points.broker(true, { host: settings === null ? '' : hostOf(settings), since }));
    }, patience);
    this.patience.unref();
  }

  private take(client: MqttClient, packet: IPublishPacket, done: (error?: Error) => void): void {
    const { connection } = this;
    this.inHand = this.inHand.then(async () => {
      const isDone = await this.deal(client, packet, connection);
      // An acknowledgement belongs to the connection that its message came by: on another it may mean another message.
      if (isDone && connection === this.connection) done();
      else done(new Error('the message stays with the broker'));
    });
  }

  private async deal(client: MqttClient, packet: IPublishPacket, connection: number): Promise<boolean> {
    const raw = this.rawOf(packet);
    for (let attempt = 1; ; attempt += 1) {
      if (this.client === null || connection !== this.connection) return false;
      const answer = await this.desk.deal(raw, attempt).catch((error: unknown) => {
        this.log.error(error);
        return null;
      });
      if (answer !== null) {
        this.answer(client, packet, raw, answer);
        return true;
      }
      await wait(Math.min(1000 * 2 ** (attempt - 1), longestPauseMilliseconds), null, { ref: false });
    }
  }

  private rawOf({ topic, payload, retain, properties }: IPublishPacket): RawMessage {
    return {
      ...partsOfTopic(topic, this.settings?.topic ?? ''),
      payload: typeof payload === 'string' ? Buffer.from(payload) : payload,
      isKept: retain,
      contentType: properties?.contentType,
      userProperties: properties?.userProperties,
    };
  }

  private answer(client: MqttClient, { properties }: IPublishPacket, raw: RawMessage, answer: MessageAnswer): void {
    if (this.settings === null || raw.weigher === '') return;
    const correlationData = properties?.correlationData;
    const echoed = correlationData === undefined ? {} : { correlationData };
    client.publish(
      `${this.settings.topic}/${raw.weigher}/answers`,
      JSON.stringify(answer),
      { qos: 1, properties: { contentType: 'application/json', ...echoed } },
      (error) => {
        if (error) this.log.warn({ weigher: raw.weigher, error: error.message });
      },
    );
  }

  private tell(said: () => Promise<void>): void {
    said().catch((error: unknown) => {
      this.log.error(error);
    });
  }
}

function topicsOf({ topic }: MqttSettings): string[] {
  return topicEnds.map((end) => `${topic}/+/${end}`);
}
