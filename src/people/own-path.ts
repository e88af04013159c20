/** Where to go after signing in: a path of this server only; anything else is the start page. */
export function ownPath(asked: unknown): string {
  if (typeof asked !== 'string' || !/^\/(?![/\\])[^\s\\]{0,500}$/.test(asked)) return '/';
  const here = 'http://house.invalid';
  if (!URL.canParse(asked, here)) return '/';
  const address = new URL(asked, here);
  return address.origin === here ? address.pathname + address.search : '/';
}
