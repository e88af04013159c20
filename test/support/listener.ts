/** One event of a stream, as it came. */
export interface HeardEvent {
  readonly id: number;
  readonly action: string;
  readonly subject: { readonly kind: string; readonly id: string };
  readonly touches: readonly { readonly kind: string; readonly id: string }[];
}

/** Somebody who listens to the journal over HTTP. */
export interface Listener {
  readonly heard: readonly HeardEvent[];
  readonly raw: () => string;
  /** Waits until so many events were heard; throws after the time. */
  until(count: number, milliseconds?: number): Promise<readonly HeardEvent[]>;
  /** Resolves when the server has ended the stream. */
  readonly over: Promise<void>;
  stop(): void;
}

/** Opens a stream; answers when its headers are there. */
export async function listenTo(
  address: string,
  headers: Readonly<Record<string, string>>,
  query = '',
): Promise<Listener> {
  const control = new AbortController();
  const answer = await fetch(`${address}/events${query}`, { headers: { ...headers }, signal: control.signal });
  if (!answer.ok || answer.body === null) throw new Error(`no stream: ${answer.status} ${await answer.text()}`);
  const heard: HeardEvent[] = [];
  let text = '';
  let taken = 0;
  const take = (): void => {
    for (let end = text.indexOf('\n\n', taken); end >= 0; end = text.indexOf('\n\n', taken)) {
      const block = text.slice(taken, end);
      taken = end + 2;
      const id = /^id: (\d+)$/m.exec(block)?.[1];
      const data = /^data: (.*)$/m.exec(block)?.[1];
      if (id !== undefined && data !== undefined)
        heard.push({ id: Number(id), ...(JSON.parse(data) as object) } as HeardEvent);
    }
  };
  const body = answer.body.pipeThrough(new TextDecoderStream());
  const over = (async () => {
    for await (const piece of body) {
      text += piece;
      take();
    }
  })().catch(() => undefined);
  return {
    heard,
    raw: () => text,
    over,
    stop: () => {
      control.abort();
    },
    until: async (count, milliseconds = 5000) => {
      const from = Date.now();
      while (heard.length < count) {
        if (Date.now() - from > milliseconds) throw new Error(`only ${heard.length} of ${count} events came`);
        await new Promise((resolve) => setTimeout(resolve, 5));
      }
      return heard;
    },
  };
}
