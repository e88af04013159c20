import { Injectable } from '@nestjs/common';

/** Facts in, PDF out: pure, so that the same facts give the same bytes. `facts` is what `issuePaper` froze. */
export type PaperRenderer = (facts: unknown, issuedAt: string) => Promise<Uint8Array>;

/** The renderers of all kinds and editions; each room adds its own. An edition that was used is kept for ever. */
@Injectable()
export class PaperRenderers {
  private readonly renderers = new Map<string, PaperRenderer>();

  add(kind: string, edition: string, renderer: PaperRenderer): void {
    const name = `${kind}/${edition}`;
    if (this.renderers.has(name)) throw new Error(`two renderers for ${name}`);
    this.renderers.set(name, renderer);
  }

  of(kind: string, edition: string): PaperRenderer {
    const renderer = this.renderers.get(`${kind}/${edition}`);
    if (renderer === undefined) throw new Error(`no renderer for ${kind}/${edition}`);
    return renderer;
  }
}
