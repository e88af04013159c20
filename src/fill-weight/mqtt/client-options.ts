import { readFileSync } from 'node:fs';
import type { IClientOptions } from 'mqtt';
import type { MqttSettings } from '../../platform/mqtt-settings.js';
import type { RawMessage } from './weight-message.js';

/** A session that never ends (OASIS MQTT 5.0, 3.1.2.11.2): the broker keeps messages for as long as it can. */
const neverEnds = 0xffff_ffff;
/** Messages that the broker hands over before the first of them is acknowledged. */
const mostUnacknowledged = 10;
/** The broker is told not to send larger ones: they would fill the memory before they could be refused. */
const largestPacketBytes = 16_777_216;

/** How the client connects: with a session that lasts, since what comes while the server is down must not be lost. */
export function clientOptions(settings: MqttSettings): IClientOptions {
  const { clientId, user, password, protocolVersion, caFile } = settings;
  return {
    clientId,
    clean: false,
    protocolVersion,
    keepalive: 30,
    connectTimeout: 10_000,
    reconnectPeriod: 2000,
    reconnectOnConnackError: true,
    // The server subscribes itself, whenever it has connected.
    resubscribe: false,
    ...(user === null ? {} : { username: user }),
    ...(password === null ? {} : { password }),
    ...(caFile === null ? {} : { ca: readFileSync(caFile) }),
    ...(protocolVersion === 5
      ? {
          properties: {
            sessionExpiryInterval: neverEnds,
            receiveMaximum: mostUnacknowledged,
            maximumPacketSize: largestPacketBytes,
          },
        }
      : {}),
  };
}

/** The broker's address as people know it, without anything secret. */
export function hostOf({ url }: MqttSettings): string {
  return new URL(url).host;
}

/** What a topic of a weigher is about. */
export const topicEnds = ['weights', 'checks'] as const;

/** The weigher that a topic names and what it is about; no weigher for a topic of another form, as an old subscription may bring. */
export function partsOfTopic(topic: string, root: string): Pick<RawMessage, 'weigher' | 'about'> {
  const [weigher = '', end = '', ...more] = topic.startsWith(`${root}/`) ? topic.slice(root.length + 1).split('/') : [];
  const about = topicEnds.find((one) => one === end);
  return about === undefined || more.length > 0 ? { weigher: '', about: 'weights' } : { weigher, about };
}
