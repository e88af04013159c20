import { once } from 'node:events';
import { createServer, request as ask, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo, Socket } from 'node:net';

/** The network between browsers and the server, in the hands of a test: it can be cut and mended, and count. */
export interface Front {
  readonly address: string;
  /** What went through, as `POST /path`. */
  readonly passed: readonly string[];
  /** From here on requests go to this server. */
  leadTo(address: string): void;
  /** As when the cable is pulled: open lines break, new ones find nobody. */
  cut(): Promise<void>;
  mend(): Promise<void>;
  /** Looks at each request on its way there and each answer on its way back; null: no more. What it says no to is lost. */
  watch(look: Watch | null): void;
  close(): Promise<void>;
}

/** `there`: the request has not reached the server; `back`: the server has answered, the browser does not know yet. */
export type Watch = (what: string, way: 'there' | 'back') => Promise<boolean>;

/** Changes a page on its way to the browser, or leaves it. */
export type Rewrite = (path: string, html: string) => string;

/** Opens a front on a port of its own that leads to the server at `address`. */
export async function openFront(address: string, rewrite: Rewrite = (_, html) => html): Promise<Front> {
  const sockets = new Set<Socket>();
  const passed: string[] = [];
  const state: { target: string; watch: Watch | null } = { target: address, watch: null };
  const pass = (request: IncomingMessage, response: ServerResponse): void => {
    const what = `${request.method ?? ''} ${(request.url ?? '').split('?')[0] ?? ''}`;
    passed.push(what);
    const look = (way: 'there' | 'back'): Promise<boolean> => state.watch?.(what, way) ?? Promise.resolve(true);
    void look('there').then((goes) => {
      if (goes) forward({ request, response, rewrite, target: state.target, look });
      else response.destroy();
    });
  };
  let server = await listen(pass, sockets, 0);
  const { port } = server.address() as AddressInfo;
  const cut = async (): Promise<void> => {
    if (!server.listening) return;
    const closed = once(server, 'close');
    server.close();
    for (const socket of sockets) socket.destroy();
    await closed;
  };
  return {
    address: `http://127.0.0.1:${port}`,
    passed,
    leadTo: (target) => {
      state.target = target;
    },
    cut,
    mend: async () => {
      if (!server.listening) server = await listen(pass, sockets, port);
    },
    watch: (look) => {
      state.watch = look;
    },
    close: cut,
  };
}

async function listen(
  pass: (request: IncomingMessage, response: ServerResponse) => void,
  sockets: Set<Socket>,
  port: number,
): Promise<Server> {
  const server = createServer(pass);
  server.on('connection', (socket) => {
    sockets.add(socket);
    socket.on('close', () => sockets.delete(socket));
  });
  server.listen(port, '127.0.0.1');
  await once(server, 'listening');
  return server;
}

interface Passing {
  readonly request: IncomingMessage;
  readonly response: ServerResponse;
  readonly rewrite: Rewrite;
  readonly target: string;
  readonly look: (way: 'back') => Promise<boolean>;
}

function forward({ request, response, rewrite, target, look }: Passing): void {
  const path = request.url ?? '/';
  const onward = ask(target + path, {
    method: request.method,
    headers: { ...request.headers, 'accept-encoding': 'identity' },
  });
  onward.on('response', (answer) => {
    void look('back').then((goes) => {
      if (goes) giveBack({ answer, response, rewrite: (html) => rewrite(path, html) });
      else response.destroy();
    });
  });
  // A server that is gone: the line breaks, as it does without anything between.
  onward.on('error', () => response.destroy());
  response.on('close', () => onward.destroy());
  request.pipe(onward);
}

interface Answering {
  readonly answer: IncomingMessage;
  readonly response: ServerResponse;
  readonly rewrite: (html: string) => string;
}

function giveBack({ answer, response, rewrite }: Answering): void {
  const isPage = (answer.headers['content-type'] ?? '').startsWith('text/html');
  if (!isPage) {
    response.writeHead(answer.statusCode ?? 502, answer.headers);
    answer.pipe(response);
    return;
  }
  const pieces: Buffer[] = [];
  answer.on('data', (piece: Buffer) => pieces.push(piece));
  answer.on('end', () => {
    const body = Buffer.from(rewrite(Buffer.concat(pieces).toString('utf8')));
    response.writeHead(answer.statusCode ?? 502, { ...answer.headers, 'content-length': body.length });
    response.end(body);
  });
}
