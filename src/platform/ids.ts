import { v7 } from 'uuid';

/** Where ids come from: UUID version 7 (RFC 9562), as lower-case text. The demo seeds its own. */
export abstract class Ids {
  abstract next(): string;
}

/** Ids by the machine's clock and its random source. */
export class SystemIds extends Ids {
  next(): string {
    return v7();
  }
}
