import { isNoLongerLive, liveAgain, lookWhoIsHere } from './standing.js';
import { say } from './words.js';

/** An entry of the journal as the stream tells it. */
interface News {
  readonly sequence: number;
  readonly action: string;
}

/** What tabs of a device tell each other. */
interface Told {
  /** A tab was opened: it has seen the journal up to here, and its page is this person's. */
  readonly since?: number;
  readonly person?: string | undefined;
  readonly news?: News;
  readonly missed?: true;
  /** The session that the stream belonged to is over. */
  readonly over?: true;
}

const channelName = 'packthread-news';
const lockName = 'packthread-news';
/** After a refusal: signed out, too many streams. */
const comeBackMilliseconds = 15_000;
/** Many entries at once refresh a page once. */
const gatherMilliseconds = 150;
const remembered = 300;

/** Keeps the parts of the page that follow the journal (`data-live`) as new as the journal. */
export function followJournal(): void {
  const page = new LivePage(Number(document.body.dataset['journal'] ?? 0));
  shareStream(page);
  document.addEventListener(liveAgain, () => {
    page.hear(null);
  });
  // Somebody signed in beside the page, perhaps.
  window.addEventListener('focus', () => {
    if (isNoLongerLive()) void lookWhoIsHere();
  });
}

/**
 * One tab of a device holds the stream and tells the others: browsers open few connections to one server. When it is
 * closed another takes over, from the last sequence that it heard.
 */
function shareStream(page: LivePage): void {
  const channel = new BroadcastChannel(channelName);
  const { person } = document.body.dataset;
  let heard = page.sequence;
  const take = (news: News): void => {
    heard = Math.max(heard, news.sequence);
    page.hear(news);
  };
  channel.addEventListener('message', ({ data }: MessageEvent<Told>) => {
    if (data.news !== undefined) take(data.news);
    if (data.missed === true) page.hear(null);
    if (data.over === true || (data.since !== undefined && data.person !== person)) void lookWhoIsHere();
  });
  channel.postMessage({ since: page.sequence, person });
  if (!isSecureContext) {
    // No locks there: each tab holds a stream of its own.
    void holdStream(channel, () => heard, take);
    return;
  }
  void navigator.locks.request(lockName, () => holdStream(channel, () => heard, take));
}

/** Listens for all tabs, and tells a tab that was opened meanwhile what it has not seen. */
async function holdStream(channel: BroadcastChannel, heard: () => number, take: (news: News) => void): Promise<never> {
  const told: News[] = [];
  const since = heard();
  channel.addEventListener('message', ({ data }: MessageEvent<Told>) => {
    const { since: from } = data;
    if (from === undefined) return;
    if (from < (told[0]?.sequence ?? since + 1) - 1) channel.postMessage({ missed: true });
    for (const news of told.filter(({ sequence }) => sequence > from)) channel.postMessage({ news });
  });
  const tell = (news: News): void => {
    told.push(news);
    if (told.length > remembered) told.shift();
    channel.postMessage({ news });
    take(news);
  };
  for (;;) {
    await listen(heard(), tell);
    // Refused, or over: whose page is this, and every other tab's? A line that was only lost is tried again later.
    channel.postMessage({ over: true });
    await lookWhoIsHere();
    await new Promise((resolve) => setTimeout(resolve, comeBackMilliseconds));
  }
}

/** Hears one stream to its end. A lost line is taken up by the browser itself; a refusal or the end is not. */
function listen(from: number, tell: (news: News) => void): Promise<void> {
  return new Promise((resolve) => {
    const stream = new EventSource(`/events?since=${from}`);
    const end = (): void => {
      stream.close();
      resolve();
    };
    stream.addEventListener('message', ({ data, lastEventId }: MessageEvent<string>) => {
      tell({ ...(JSON.parse(data) as News), sequence: Number(lastEventId) });
    });
    stream.addEventListener('over', end);
    stream.addEventListener('error', () => {
      if (stream.readyState === EventSource.CLOSED) end();
    });
  });
}

class LivePage {
  private readonly changed = new Set<string>();
  private gathering: ReturnType<typeof setTimeout> | null = null;

  constructor(public sequence: number) {}

  /** Null: something was missed, so everything may have changed. */
  hear(news: News | null): void {
    if (news !== null && news.sequence <= this.sequence) return;
    for (const region of document.querySelectorAll<HTMLElement>('[data-live]')) {
      const about = (region.dataset['live'] ?? '').split(' ');
      if (news === null || about.includes(news.action)) this.changed.add(region.id);
    }
    if (this.changed.size > 0) {
      this.gathering ??= setTimeout(() => {
        void this.refresh();
      }, gatherMilliseconds);
    }
  }

  private async refresh(): Promise<void> {
    this.gathering = null;
    // What stands here is somebody else's, or nobody's: it stays as it was.
    if (isNoLongerLive()) return;
    const ids = [...this.changed];
    this.changed.clear();
    try {
      const answer = await fetch(location.href, { headers: { Accept: 'text/html' } });
      if (!answer.ok || new URL(answer.url).pathname !== location.pathname) {
        await lookWhoIsHere();
        return;
      }
      const made = new DOMParser().parseFromString(await answer.text(), 'text/html');
      if (made.body.dataset['person'] !== document.body.dataset['person']) {
        await lookWhoIsHere();
        return;
      }
      this.sequence = Number(made.body.dataset['journal'] ?? this.sequence);
      for (const id of ids) swap(id, made);
    } catch {
      // Off line: what was missed is told when the stream comes back.
      for (const id of ids) this.changed.add(id);
    }
  }
}

function swap(id: string, made: Document): void {
  const [old, fresh] = [document.getElementById(id), made.getElementById(id)];
  if (old === null || fresh === null || old.innerHTML === fresh.innerHTML) return;
  if (holdsTyping(old)) offer(old, fresh);
  else {
    document.getElementById(`${id}-changed`)?.remove();
    const goOn = keepFocus(old, fresh);
    old.replaceWith(fresh);
    goOn();
    fresh.dispatchEvent(new Event('swapped', { bubbles: true }));
  }
}

/** Who works by keyboard stays where they were: at the same thing, else at the place it had, else at the region. */
function keepFocus(old: HTMLElement, fresh: HTMLElement): () => void {
  const { activeElement } = document;
  if (!old.contains(activeElement)) return () => undefined;
  const stops = (region: HTMLElement): readonly HTMLElement[] => [
    ...region.querySelectorAll<HTMLElement>('a[href], button, summary, input:not([type=hidden]), select, textarea'),
  ];
  const place = stops(old).findIndex((stop) => stop === activeElement);
  const href = activeElement?.getAttribute('href') ?? null;
  const after = stops(fresh);
  const same = href === null ? undefined : after.find((stop) => stop.getAttribute('href') === href);
  return () => {
    const next = same ?? after[Math.min(place, after.length - 1)] ?? fresh;
    if (next === fresh) fresh.tabIndex = -1;
    next.focus({ preventScroll: true });
  };
}

/** Whether somebody has entered something in it that is not sent yet. */
function holdsTyping(region: HTMLElement): boolean {
  return [
    ...region.querySelectorAll<HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement>('input, textarea, select'),
  ].some((field) => {
    if (field instanceof HTMLSelectElement)
      return [...field.options].some((one) => one.selected !== one.defaultSelected) && field === document.activeElement;
    if (field.type === 'hidden') return false;
    if (field.type === 'checkbox' || field.type === 'radio')
      return (field as HTMLInputElement).checked !== (field as HTMLInputElement).defaultChecked;
    return field.value !== field.defaultValue;
  });
}

/** Says quietly that there is something newer, and shows it when asked. */
function offer(old: HTMLElement, fresh: HTMLElement): void {
  const id = `${old.id}-changed`;
  const known = document.getElementById(id);
  const line = document.createElement('p');
  line.id = id;
  line.className = 'changed';
  line.setAttribute('role', 'status');
  const button = document.createElement('button');
  button.type = 'button';
  button.className = 'plain';
  button.textContent = say('browser-show-change');
  button.addEventListener('click', () => {
    old.replaceWith(fresh);
    line.remove();
    fresh.tabIndex = -1;
    fresh.focus();
  });
  line.append(`${say('browser-this-changed')} `, button);
  if (known === null) old.before(line);
  else known.replaceWith(line);
}
