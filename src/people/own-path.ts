/** Where to go after signing in: a path of this server only; anything else is the start page. */
export function ownPath(asked: unknown): string {
  if (typeof asked !== 'string' || !/^\/(?![/\\])[^\s\\]{0,500}$/.test(asked)) return '/';
  const here = 'http://house.invalid';
  if (!URL.canParse(asked, here)) return '/';
  const address = new URL(asked, here);
  // Steps back may leave two slashes, which a browser would read as another server.
  const isHere = address.origin === here && !address.pathname.startsWith('//');
  return isHere ? address.pathname + address.search : '/';
}
