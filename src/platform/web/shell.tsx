import type { ComponentChildren, VNode } from 'preact';
import { mayDo, type Permission } from '../actor.js';
import { say } from '../sentences/sentences.js';
import { assetAddress, houseModule } from './browser-files.js';
import type { Viewer } from './request.js';

interface ShellProps {
  readonly title: string;
  readonly viewer: Viewer;
  readonly children: ComponentChildren;
}

/** The way through the house, in the product's order. Each room's lists are linked here. */
const ways: readonly { readonly href: string; readonly code: string; readonly permission: Permission }[] = [
  { href: '/', code: 'way-search', permission: 'read' },
  { href: '/open-points', code: 'way-open-points', permission: 'read' },
  { href: '/bags', code: 'way-bags', permission: 'read' },
  { href: '/samples', code: 'way-samples', permission: 'read' },
  { href: '/holds', code: 'way-holds', permission: 'read' },
  { href: '/runs', code: 'way-runs', permission: 'read' },
  { href: '/hoppers', code: 'way-hoppers', permission: 'read' },
  { href: '/pallets', code: 'way-pallets', permission: 'read' },
  { href: '/deliveries', code: 'way-deliveries', permission: 'read' },
  { href: '/accounts', code: 'way-accounts', permission: 'read' },
  { href: '/papers', code: 'way-papers', permission: 'read' },
  { href: '/plant', code: 'way-plant', permission: 'read' },
  { href: '/journal', code: 'way-journal', permission: 'read' },
  { href: '/people', code: 'way-people', permission: 'keep-people' },
  { href: '/devices', code: 'way-devices', permission: 'keep-people' },
];

/** The frame of every page for someone who is signed in. */
export function Shell({ title, viewer, children }: ShellProps): VNode {
  return (
    <Document title={`${title} · ${viewer.siteName}`}>
      <a class="skip" href="#content">
        {say('skip-to-content')}
      </a>
      <header class="top">
        <nav aria-label={say('way-through-the-house')}>
          <ul>
            {ways
              .filter((way) => mayDo(viewer.actor.roles, way.permission))
              .map((way) => (
                <li key={way.href}>
                  <a href={way.href} aria-current={isHere(viewer.path, way.href) ? 'page' : undefined}>
                    {say(way.code)}
                  </a>
                </li>
              ))}
          </ul>
        </nav>
        <form class="who" method="post" action="/sign-out">
          <input type="hidden" name="csrf" value={viewer.csrfToken} />
          <a href="/change-password">{viewer.name}</a>
          <button type="submit">{say('sign-out')}</button>
        </form>
      </header>
      <main id="content" tabIndex={-1}>
        <h1>{title}</h1>
        {children}
      </main>
    </Document>
  );
}

/** The frame of a page for someone who is not signed in. */
export function BarePage({ title, children }: { title: string; children: ComponentChildren }): VNode {
  return (
    <Document title={title}>
      <main id="content" class="bare">
        <h1>{title}</h1>
        {children}
      </main>
    </Document>
  );
}

function Document({ title, children }: { title: string; children: ComponentChildren }): VNode {
  return (
    <html lang="en">
      <head>
        <meta charSet="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>{`${title} · Packthread`}</title>
        <link rel="stylesheet" href={assetAddress('house.css')} />
        <script type="module" src={assetAddress(houseModule)} />
      </head>
      <body>{children}</body>
    </html>
  );
}

function isHere(path: string, href: string): boolean {
  return href === '/' ? path === '/' : path === href || path.startsWith(`${href}/`);
}
