import { createRequire } from 'node:module';
import type * as Mqtt from 'mqtt';

const require = createRequire(import.meta.url);

/** What speaks to a broker, loaded where the settings name one: some three megabytes. */
export const mqttLibrary = (): typeof Mqtt => require('mqtt') as typeof Mqtt;
