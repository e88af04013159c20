/** So long a report gives way in all; then it goes on beside what somebody waits for. Our own value, no source. */
const mostGivenMilliseconds = 250;

/** How many questions somebody waits for: the server counts them, a thread with a report gives way to them. */
export class WaitedFor {
  /** @param shared one whole number, in memory that threads share */
  constructor(readonly shared: Int32Array<SharedArrayBuffer> = new Int32Array(new SharedArrayBuffer(4))) {}

  add(): void {
    Atomics.add(this.shared, 0, 1);
  }

  remove(): void {
    if (Atomics.sub(this.shared, 0, 1) === 1) Atomics.notify(this.shared, 0);
  }

  /** For one report: to be called between its parts, keeps its thread until nobody waits or it has given enough. */
  givingWay(): () => void {
    let left = mostGivenMilliseconds;
    return () => {
      for (let count = this.count(); count > 0 && left > 0; count = this.count()) {
        const begun = performance.now();
        Atomics.wait(this.shared, 0, count, left);
        left -= performance.now() - begun;
      }
    };
  }

  private count(): number {
    return Atomics.load(this.shared, 0);
  }
}
