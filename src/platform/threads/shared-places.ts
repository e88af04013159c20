/** Bytes of one place: three times the largest answers that were met. What is longer comes as text. Our own value, no source. */
const placeBytes = 2 * 1024 * 1024;
/** Together they are as much as so many answers that whoever asked is slow to take. Our own value, no source. */
const mostPlaces = 4;

/** An answer to be sent as it is. `giveBack` once it has been sent, or will not be: until then the bytes stay. */
export interface HeldAnswer {
  readonly bytes: Buffer;
  readonly giveBack: () => void;
}

/**
 * Places in memory that all threads see, for answers on their way from the thread that writes them to whoever asked: the
 * server keeps no text of them. Taken last given back first, so that few are ever touched.
 */
export class SharedPlaces {
  private readonly free: SharedArrayBuffer[] = [];
  private madeCount = 0;

  /** Null where all are taken. */
  take(): SharedArrayBuffer | null {
    const place = this.free.pop();
    if (place !== undefined || this.madeCount === mostPlaces) return place ?? null;
    this.madeCount += 1;
    return new SharedArrayBuffer(placeBytes);
  }

  giveBack(place: SharedArrayBuffer): void {
    this.free.push(place);
  }

  /** What a thread has written there; giving back twice is giving back once. */
  held(place: SharedArrayBuffer, byteCount: number): HeldAnswer {
    let isHeld = true;
    return {
      bytes: Buffer.from(place, 0, byteCount),
      giveBack: () => {
        if (isHeld) this.giveBack(place);
        isHeld = false;
      },
    };
  }
}

/** Writes a text where the server can see it; how many bytes that took, or null where there is not place enough. */
export function writeInto(place: SharedArrayBuffer, text: string): number | null {
  const { read, written } = new TextEncoder().encodeInto(text, new Uint8Array(place));
  return read === text.length ? written : null;
}
