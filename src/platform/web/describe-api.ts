import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { DocumentBuilder, SwaggerModule, type OpenAPIObject } from '@nestjs/swagger';

/** The description of all JSON routes, as OpenAPI 3.1. */
export function apiDescription(house: NestFastifyApplication): OpenAPIObject {
  const basis = new DocumentBuilder()
    .setOpenAPIVersion('3.1.0')
    .setTitle('Packthread')
    .setDescription(
      'Follows a dry, free-flowing food through a packing house. Every change takes an Idempotency-Key header; problems are documents of RFC 9457 and are told apart by their type.',
    )
    .setVersion('0.1.0')
    .addCookieAuth('packthread-session')
    .addBearerAuth()
    .build();
  const described = SwaggerModule.createDocument(house, basis);
  const paths = Object.fromEntries(Object.entries(described.paths).filter(([path]) => path.startsWith('/api')));
  return { ...described, paths };
}

/** Puts the description where clients look for it. */
export function describeApi(house: NestFastifyApplication): void {
  let description: string | null = null;
  house
    .getHttpAdapter()
    .getInstance()
    .get('/api/openapi.json', (_, reply) => {
      description ??= JSON.stringify(apiDescription(house));
      void reply.type('application/json').send(description);
    });
}
