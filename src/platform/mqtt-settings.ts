import { X509Certificate } from 'node:crypto';
import { readFileSync } from 'node:fs';

/** How the server reaches the broker of a plant (MQTT, ISO/IEC 20922), and on which topics weights come. */
export interface MqttSettings {
  readonly url: string;
  /** The levels before the weigher's: weights come on `{topic}/{weigher}/weights`. */
  readonly topic: string;
  readonly clientId: string;
  readonly user: string | null;
  readonly password: string | null;
  readonly protocolVersion: 4 | 5;
  /** A file with the certificate of whoever signed the broker's; null: those that the machine trusts. */
  readonly caFile: string | null;
}

const topicPattern = /^[A-Za-z0-9._-]+(\/[A-Za-z0-9._-]+)*$/;
const clientIdPattern = /^[A-Za-z0-9-]{1,60}$/;
const encrypted: ReadonlySet<string> = new Set(['mqtts:', 'wss:']);
const taken: ReadonlySet<string> = new Set(['mqtt:', 'mqtts:', 'ws:', 'wss:']);
const ownMachine: ReadonlySet<string> = new Set(['localhost', '127.0.0.1', '[::1]']);

/** Reads the settings of MQTT; adds a sentence to `problems` for each that cannot be used. */
export function readMqttSettings(given: (name: string) => string | null, problems: string[]): MqttSettings | null {
  const url = given('MQTT_URL');
  if (url === null) return null;
  const settings = {
    url,
    topic: given('MQTT_TOPIC') ?? 'packthread',
    clientId: given('MQTT_CLIENT_ID') ?? 'packthread',
    user: given('MQTT_USER'),
    password: given('MQTT_PASSWORD'),
    protocolVersion: given('MQTT_VERSION') === '3.1.1' ? 4 : 5,
    caFile: given('MQTT_CA_FILE'),
  } as const;
  problems.push(...urlProblems(url, given('MQTT_WITHOUT_TLS') ?? 'no'), ...otherProblems(settings));
  const version = given('MQTT_VERSION') ?? '5';
  if (version !== '5' && version !== '3.1.1') problems.push(`MQTT_VERSION is "${version}"; it takes 5 or 3.1.1`);
  return settings;
}

function urlProblems(url: string, withoutTls: string): string[] {
  const problems: string[] = [];
  if (withoutTls !== 'yes' && withoutTls !== 'no') {
    problems.push(`MQTT_WITHOUT_TLS is "${withoutTls}"; it takes yes or no`);
  }
  const address = URL.canParse(url) ? new URL(url) : null;
  if (address === null || !taken.has(address.protocol) || address.hostname === '') {
    return [...problems, 'MQTT_URL takes mqtts://host:8883 (or mqtt://localhost:1883 on the same machine)'];
  }
  if (address.username !== '' || address.password !== '') {
    problems.push('MQTT_URL holds a user or a password; they go into MQTT_USER and MQTT_PASSWORD');
  }
  if (encrypted.has(address.protocol) || ownMachine.has(address.hostname) || withoutTls === 'yes') return problems;
  const way = 'Take mqtts://, or say MQTT_WITHOUT_TLS=yes where the network is closed by other means';
  return [
    ...problems,
    `MQTT_URL leads to ${address.hostname} without TLS: anybody on the way could add weights. ${way}`,
  ];
}

function otherProblems({ topic, clientId, caFile }: MqttSettings): string[] {
  const problems: string[] = [];
  if (!topicPattern.test(topic) || topic.length > 100) {
    problems.push(
      `MQTT_TOPIC is "${topic}"; it takes levels of letters and digits, parted by /, such as plant-1/packing`,
    );
  }
  if (!clientIdPattern.test(clientId)) {
    problems.push(`MQTT_CLIENT_ID is "${clientId}"; it takes letters, digits and hyphens, 60 at most`);
  }
  if (caFile !== null && !holdsCertificate(caFile)) {
    problems.push(`MQTT_CA_FILE is "${caFile}"; it takes a file with a certificate (PEM), and none can be read there`);
  }
  return problems;
}

function holdsCertificate(file: string): boolean {
  try {
    return new X509Certificate(readFileSync(file)).subject !== '';
  } catch {
    return false;
  }
}
