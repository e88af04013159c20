import type { OnProgress } from './play/play-days.js';

const width = 40;

/** A bar on standard error; where that is no terminal, a line for each tenth. */
export function progressBar(label: string, out: NodeJS.WriteStream = process.stderr): OnProgress {
  let shown = -1;
  return (done, all) => {
    const percent = all === 0 ? 100 : Math.floor((100 * done) / all);
    const step = out.isTTY ? percent : Math.floor(percent / 10) * 10;
    if (step === shown) return;
    shown = step;
    const full = Math.round((width * step) / 100);
    const bar = `${label} [${'#'.repeat(full)}${'.'.repeat(width - full)}] ${String(step).padStart(3)} %`;
    out.write(out.isTTY ? `\r${bar}${step === 100 ? '\n' : ''}` : `${bar}\n`);
  };
}
