import { Agent, request } from 'node:http';
import { setTimeout as pause } from 'node:timers/promises';
import { parentPort, workerData } from 'node:worker_threads';

/** A thread of the bench: asks what needs hardly any work every ten milliseconds, until it is told to end. */
const everyMilliseconds = 10;
const port = workerData as number;
const agent = new Agent({ keepAlive: true, maxSockets: 20 });
const times: number[] = [];
const state = { isGoingOn: true };

parentPort?.once('message', () => {
  state.isGoingOn = false;
});
const open: Promise<void>[] = [];
while (state.isGoingOn) {
  open.push(one());
  await pause(everyMilliseconds);
}
await Promise.all(open);
agent.destroy();
parentPort?.postMessage(times);

function one(): Promise<void> {
  const begun = performance.now();
  return new Promise((resolve, reject) => {
    const sent = request({ port, path: '/healthz', agent }, (answer) => {
      answer.resume();
      answer.on('end', () => {
        times.push(performance.now() - begun);
        resolve();
      });
    });
    sent.on('error', reject);
    sent.end();
  });
}
