import cookie from '@fastify/cookie';
import helmet from '@fastify/helmet';
import rateLimit from '@fastify/rate-limit';
import { ConsoleLogger, type DynamicModule } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import { FastifyAdapter, type NestFastifyApplication } from '@nestjs/platform-fastify';
import type { FastifyReply } from 'fastify';
import { migrations } from '../migrations/index.js';
import { entities } from './entities.js';
import { HouseModule } from './house.module.js';
import { SystemClock, type Clock } from './platform/clock.js';
import type { Config } from './platform/config.js';
import { checkDatabases } from './platform/database/check-databases.js';
import { openDatabases, type Databases } from './platform/database/databases.js';
import { migrate } from './platform/database/migrate.js';
import { SystemIds, type Ids } from './platform/ids.js';
import { packAnswers } from './platform/web/answer-encoding.js';
import { checkRoutes } from './platform/web/check-routes.js';
import { formPipe } from './platform/web/check-form.js';
import { describeApi } from './platform/web/describe-api.js';
import { takeFiles } from './platform/web/brought-file.js';
import { leaveStreamsUnread } from './platform/web/streamed-body.js';
import { PageInterceptor } from './platform/web/page.interceptor.js';
import { languageBeforeSignIn } from './platform/web/language-asked.js';
import { answerUnreadAddress, ProblemFilter } from './platform/web/problem.filter.js';
import { inConversation } from './platform/sentences/language.js';
import './platform/sentences/platform.sentences.js';
import './platform/sentences/platform.sentences.es.js';
import './platform/sentences/field-names.sentences.js';
import './platform/sentences/field-names.sentences.es.js';
import './platform/sentences/pages.sentences.js';
import './platform/sentences/pages.sentences.es.js';
import './platform/sentences/states.sentences.js';
import './platform/sentences/states.sentences.es.js';

/** What may stand in the place of the machine's own clock and ids, and what is built onto the house. */
export interface Replacements {
  readonly clock?: Clock;
  readonly ids?: Ids;
  /** Only the demo builds a room on: the house itself has none such. */
  readonly annexe?: DynamicModule;
}

/** Opens the databases, brings the schema up to date and checks what must hold. */
export async function openGround(config: Config): Promise<Databases> {
  const databases = await openDatabases({ ...config, entities, migrations });
  try {
    await migrate(databases);
    await checkDatabases(databases);
    return databases;
  } catch (error) {
    await databases.close();
    throw error;
  }
}

/** Builds the whole server on open databases; it does not listen yet. */
export async function buildHouse(
  config: Config,
  databases: Databases,
  replacements: Replacements = {},
): Promise<NestFastifyApplication> {
  const ground = {
    config,
    databases,
    clock: replacements.clock ?? new SystemClock(),
    ids: replacements.ids ?? new SystemIds(),
  };
  const adapter = new FastifyAdapter({
    bodyLimit: config.bodyLimitBytes,
    forceCloseConnections: true,
    trustProxy: config.trustProxy,
    // Whoever sends a request drop by drop does not hold a connection for ever. Event streams are answers, not requests.
    requestTimeout: 30_000,
    // Node takes the larger of the two limits for the body, and looks only every so often.
    http: { headersTimeout: 15_000, connectionsCheckingInterval: 5_000 },
    frameworkErrors: (_error: unknown, _request: unknown, reply: FastifyReply) => {
      answerUnreadAddress(reply);
    },
    logger: config.logLevel === 'silent' ? false : { level: config.logLevel, redact: ['req.headers', 'res.headers'] },
  });
  const house = await NestFactory.create<NestFastifyApplication>(HouseModule.on(ground, replacements.annexe), adapter, {
    logger: houseLog(config),
    abortOnError: false,
  });
  await furnish(house, config);
  await house.init();
  checkRoutes(house);
  await house.getHttpAdapter().getInstance().ready();
  return house;
}

/** JSON lines, as the server's own. What the framework says while it maps routes is of use only when debugging. */
function houseLog(config: Config): ConsoleLogger | false {
  if (config.logLevel === 'silent') return false;
  const levels = ['fatal', 'error', 'warn'] as const;
  const most = config.logLevel === 'debug' ? ([...levels, 'log', 'debug'] as const) : levels;
  const place = most.findIndex((level) => level === config.logLevel);
  return new ConsoleLogger({ json: true, colors: false, logLevels: place < 0 ? [...most] : most.slice(0, place + 1) });
}

async function furnish(house: NestFastifyApplication, config: Config): Promise<void> {
  await house.register(cookie);
  await house.register(rateLimit, { max: config.requestsPerMinute, timeWindow: '1 minute' });
  await house.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'none'"],
        styleSrc: ["'self'"],
        scriptSrc: ["'self'"],
        imgSrc: ["'self'"],
        fontSrc: ["'self'"],
        connectSrc: ["'self'"],
        workerSrc: ["'self'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
        baseUri: ["'none'"],
      },
    },
    referrerPolicy: { policy: 'same-origin' },
    hsts: config.secureCookies,
  });
  packAnswers(house.getHttpAdapter().getInstance());
  leaveStreamsUnread(house.getHttpAdapter().getInstance());
  takeFiles(house.getHttpAdapter().getInstance());
  // Whom the house speaks to is settled by the guard; the conversation begins when the body has been read.
  house
    .getHttpAdapter()
    .getInstance()
    .addHook('preHandler', (request, _reply, done) => {
      inConversation(done, languageBeforeSignIn(request));
    });
  house.useGlobalPipes(formPipe());
  house.useGlobalFilters(new ProblemFilter());
  house.useGlobalInterceptors(new PageInterceptor());
  describeApi(house);
}
