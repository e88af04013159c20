import { RequestMethod, type INestApplicationContext } from '@nestjs/common';
import { DiscoveryService, MetadataScanner } from '@nestjs/core';

/** A route that is no JSON: a page, or where its forms are sent. Ids in the path stand as `:name`. */
export interface PageRoute {
  readonly method: 'GET' | 'POST';
  readonly path: string;
}

/** Every route of the house outside `/api`, as the controllers state them. */
export function pageRoutesOf(house: INestApplicationContext): readonly PageRoute[] {
  const scanner = new MetadataScanner();
  const routes = house
    .get(DiscoveryService, { strict: false })
    .getControllers()
    .flatMap(({ instance, metatype }) => {
      if (instance === null || instance === undefined || !metatype) return [];
      const prototype = Object.getPrototypeOf(instance) as Record<string, (...args: unknown[]) => unknown>;
      const roots = listed(Reflect.getMetadata('path', metatype));
      return scanner.getAllMethodNames(prototype).flatMap((name) => {
        const method = prototype[name];
        if (method === undefined) return [];
        const ends = listed(Reflect.getMetadata('path', method));
        return roots.flatMap((root) => ends.map((end) => routeOf(root, end, Reflect.getMetadata('method', method))));
      });
    });
  return routes.filter((route): route is PageRoute => route !== null && !/^\/api(\/|$)/.test(route.path));
}

function listed(path: unknown): readonly string[] {
  if (typeof path === 'string') return [path];
  return Array.isArray(path) ? path.filter((one): one is string => typeof one === 'string') : [];
}

function routeOf(root: string, end: string, method: unknown): PageRoute | null {
  if (method !== RequestMethod.GET && method !== RequestMethod.POST) return null;
  const path = `/${[root, end]
    .map((part) => part.replace(/^\/+|\/+$/g, ''))
    .filter((part) => part !== '')
    .join('/')}`;
  return { method: method === RequestMethod.GET ? 'GET' : 'POST', path };
}
