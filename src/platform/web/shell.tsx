import type { ComponentChildren, VNode } from 'preact';
import { languageNow } from '../sentences/language.js';
import { say } from '../sentences/sentences.js';
import { assetAddress, firstScript, houseModule } from './browser-files.js';
import { Banners } from './kit/banner.js';
import { sayLocally } from './local-text.js';
import type { Viewer } from './request.js';
import { desks, records, waysOf, type Way } from './ways.js';

interface ShellProps {
  readonly title: string;
  readonly viewer: Viewer;
  /**
   * How the page is used: with gloves on a tablet, in the hand on the dock, or at a desk. Where a page does not say, a
   * device that people share is used with gloves.
   */
  readonly use?: 'tablet' | 'handheld' | 'desk' | undefined;
  /** The title is read out, not shown: the page says it in its own way. */
  readonly hasUnseenTitle?: boolean | undefined;
  readonly children: ComponentChildren;
}

/** The frame of every page for someone who is signed in. */
export function Shell({ title, viewer, use, hasUnseenTitle, children }: ShellProps): VNode {
  const used = use ?? (viewer.deviceCode === null ? 'desk' : 'tablet');
  return (
    <Document title={`${title} · ${viewer.siteName}`} use={used} viewer={viewer}>
      <a class="skip" href="#content">
        {say('skip-to-content')}
      </a>
      <Top viewer={viewer} />
      <main id="content" tabIndex={-1}>
        {viewer.said === null ? null : (
          <p class="said-before" role="status">
            {sayLocally(viewer.said.code, viewer.said.facts, viewer.timeZone)}
          </p>
        )}
        <Banners viewer={viewer} />
        <h1 class={hasUnseenTitle === true ? 'unseen' : undefined}>{title}</h1>
        {children}
      </main>
    </Document>
  );
}

/** Where one is, where one may go, the search box, and who is here. */
function Top({ viewer }: { readonly viewer: Viewer }): VNode {
  const { roles } = viewer.actor;
  return (
    <header class="top">
      <nav aria-label={say('way-through-the-house')}>
        <ul>
          <Ways ways={waysOf(desks, roles)} path={viewer.path} />
          <li>
            <details class="records">
              <summary>{say('way-records')}</summary>
              <ul>
                <Ways ways={waysOf(records, roles)} path={viewer.path} />
              </ul>
            </details>
          </li>
        </ul>
      </nav>
      <form class="find" method="get" action="/thread" role="search" aria-label={say('find-label')}>
        <label for="find" class="unseen">
          {say('find-label')}
        </label>
        <input id="find" name="code" type="search" maxLength={200} autocomplete="off" placeholder={say('find-label')} />
        <button type="submit" class="plain">
          {say('find-act')}
        </button>
      </form>
      <p id="waiting" role="status" hidden />
      <form class="who" method="post" action="/sign-out">
        <input type="hidden" name="csrf" value={viewer.csrfToken} />
        <a href="/me">{viewer.name}</a>
        <button type="submit" class="plain">
          {say('sign-out')}
        </button>
      </form>
    </header>
  );
}

function Ways({ ways, path }: { readonly ways: readonly Way[]; readonly path: string }): VNode {
  const here = ways
    .filter((way) => isHere(path, way.href))
    .sort((one, other) => other.href.length - one.href.length)[0];
  return (
    <>
      {ways.map((way) => (
        <li key={way.href}>
          <a href={way.href} aria-current={way === here ? 'page' : undefined}>
            {say(way.code)}
          </a>
        </li>
      ))}
    </>
  );
}

interface BarePageProps {
  readonly title: string;
  /** It holds a table. */
  readonly isWide?: boolean | undefined;
  readonly children: ComponentChildren;
}

/** The frame of a page for someone who is not signed in. */
export function BarePage({ title, isWide, children }: BarePageProps): VNode {
  return (
    <Document title={title} use="desk" viewer={null}>
      <main id="content" class={isWide === true ? undefined : 'bare'}>
        <h1>{title}</h1>
        {children}
      </main>
    </Document>
  );
}

interface DocumentProps {
  readonly title: string;
  readonly use: 'tablet' | 'handheld' | 'desk';
  readonly viewer: Viewer | null;
  readonly children: ComponentChildren;
}

function Document({ title, use, viewer, children }: DocumentProps): VNode {
  return (
    <html lang={languageNow()}>
      <head>
        <meta charSet="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>{`${title} · Packthread`}</title>
        <link rel="stylesheet" href={assetAddress('house.css')} />
        <script src={assetAddress(firstScript)} />
        <script type="module" src={assetAddress(houseModule)} />
        <link rel="stylesheet" href="/assets/size.css" />
      </head>
      <body class={use} {...forScript(viewer)}>
        {children}
      </body>
    </html>
  );
}

/** What the browser's modules need to know of the page. */
function forScript(viewer: Viewer | null): Record<string, string | number | undefined> {
  if (viewer === null) return {};
  return {
    'data-person': viewer.actor.personId ?? undefined,
    'data-name': viewer.name,
    'data-device': viewer.actor.deviceId ?? undefined,
    'data-csrf': viewer.csrfToken,
    'data-journal': viewer.journalSequence,
  };
}

function isHere(path: string, href: string): boolean {
  return href === '/' ? path === '/' : path === href || path.startsWith(`${href}/`);
}
