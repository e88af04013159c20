import type { VNode } from 'preact';
import { say } from '../../sentences/sentences.js';
import { sayLocally } from '../local-text.js';
import type { ShownBanner, Viewer } from '../request.js';
import { Act } from './act.js';
import { EntryForm } from './entry-form.js';

/** More than these would push the page away; the rest is a number that leads to the list. */
const mostShown = 2;

/** How long a banner is put aside with one press. */
const shelfMinutes = 30;

/** What may interrupt the person who looks: what stops first, and how much more there is. Nothing on a quiet page. */
export function Banners({ viewer }: { readonly viewer: Viewer }): VNode | null {
  const banners = viewer.banners ?? [];
  if (banners.length === 0) return null;
  const more = banners.slice(mostShown);
  return (
    <aside class="banners" aria-label={say('banners-title')}>
      {banners.slice(0, mostShown).map((banner) => (
        <Banner key={banner.pointId} banner={banner} viewer={viewer} />
      ))}
      {more.length === 0 ? null : <a href="/open-points">{say('banners-more', { count: more.length })}</a>}
    </aside>
  );
}

function Banner({ banner, viewer }: { readonly banner: ShownBanner; readonly viewer: Viewer }): VNode {
  const { pointId, pointClass, cause, facts, pointCount, href, withinMinutes } = banner;
  return (
    <div class={`banner ${pointClass}`} role={pointClass === 'stop' ? 'alert' : undefined}>
      <p>
        <strong>{say(`banner-${pointClass}`)}</strong> {sayLocally(cause, facts, viewer.timeZone)}{' '}
        <span class="time">{say('banner-within', { minutes: withinMinutes })}</span>{' '}
        {pointCount === 1 ? null : <span>{say('banner-and-others', { count: pointCount - 1 })}</span>}
      </p>
      <div class="acts">
        {href === null ? null : (
          <a class="act plain" href={href}>
            {say('banner-look')}
          </a>
        )}
        {pointClass === 'stop' ? null : (
          <EntryForm viewer={viewer} action={`/open-points/${pointId}/shelf`} id={`shelf-${pointId}`}>
            <input type="hidden" name="minutes" value={shelfMinutes} />
            <input type="hidden" name="back" value={viewer.path} />
            <Act says={say('banner-shelve', { minutes: shelfMinutes })} tone="plain" />
          </EntryForm>
        )}
      </div>
    </div>
  );
}
