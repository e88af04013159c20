import type { INestApplicationContext } from '@nestjs/common';
import { DiscoveryService, MetadataScanner, Reflector } from '@nestjs/core';
import { permissionKey } from '../actor.js';

/** @throws {Error} naming each route that does not state who may call it */
export function checkRoutes(house: INestApplicationContext): void {
  const discovery = house.get(DiscoveryService, { strict: false });
  const scanner = new MetadataScanner();
  const reflector = new Reflector();
  const silent = discovery.getControllers().flatMap(({ instance, metatype }) => {
    const controller = instance as Record<string, unknown> | null;
    if (controller === null || !metatype) return [];
    const prototype = Object.getPrototypeOf(controller) as Record<string, (...args: unknown[]) => unknown>;
    return scanner
      .getAllMethodNames(prototype)
      .filter((name) => {
        const method = prototype[name];
        if (method === undefined || Reflect.getMetadata('path', method) === undefined) return false;
        return reflector.getAllAndOverride(permissionKey, [method, metatype]) === undefined;
      })
      .map((name) => `${metatype.name}.${name}`);
  });
  if (silent.length > 0) throw new Error(`These routes do not state who may call them: ${silent.join(', ')}`);
}
