import { ask } from './ask.js';
import type { ToAsk, Told } from './asker.js';

/** Asks what it is told to, and tells what came back. */
process.on('message', ({ number, url, headers, body }: ToAsk) => {
  const tell = (told: Told): void => void process.send?.(told);
  ask(url, headers, body).then(
    (answered) => {
      tell({ number, answered });
    },
    (error: unknown) => {
      tell({ number, fault: String(error) });
    },
  );
});
