import { Agent, request, type IncomingMessage } from 'node:http';
import type { Headers } from './sign-in.js';

/** What came back, and how long it took to its last byte. */
export interface Answered {
  readonly milliseconds: number;
  readonly byteCount: number;
}

/** Connections are kept, as a browser keeps them. */
const agent = new Agent({ keepAlive: true, maxSockets: 16 });

/**
 * Asks and counts what comes back, which is neither unpacked nor kept: who asks sits at another machine in a packing house,
 * and shall take little of this one. Throws for an answer that refuses.
 */
export async function ask(url: string, headers: Headers, body: object | null = null): Promise<Answered> {
  const begun = performance.now();
  const answer = await new Promise<IncomingMessage>((resolve, reject) => {
    const asking = request(url, { agent, headers, method: body === null ? 'GET' : 'POST' }, resolve);
    asking.on('error', reject);
    asking.end(body === null ? undefined : JSON.stringify(body));
  });
  const { statusCode = 0 } = answer;
  if (statusCode >= 300) throw new Error(`${url} answered ${statusCode}: ${await textOf(answer)}`);
  let byteCount = 0;
  answer.on('data', (part: Buffer) => {
    byteCount += part.byteLength;
  });
  await new Promise((resolve, reject) => {
    answer.on('end', resolve);
    answer.on('error', reject);
  });
  return { milliseconds: performance.now() - begun, byteCount };
}

async function textOf(answer: IncomingMessage): Promise<string> {
  const parts: Buffer[] = [];
  for await (const part of answer) parts.push(part as Buffer);
  return Buffer.concat(parts).toString();
}
