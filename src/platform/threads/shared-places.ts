/** Bytes of one place: three times what a hold on a dryer shift reaches in the mean. What is longer comes as text. Our own value, no source. */
const placeBytes = 2 * 1024 * 1024;
/** So many answers may be on their way at once; further ones come as texts. Our own value, no source. */
const mostPlaces = 4;

/** An answer to be sent as it is. `giveBack` once it has been sent, or will not be: until then the bytes stay. */
export interface HeldAnswer {
  readonly bytes: Buffer;
  readonly giveBack: () => void;
}

/**
 * Places in memory that all threads see, for answers on their way from the thread that writes them to whoever asked: the
 * server keeps no text of them. What was given back last is taken first, so that few are ever touched.
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
