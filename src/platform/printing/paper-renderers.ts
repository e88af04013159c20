import { Injectable } from '@nestjs/common';

/** Facts in, PDF out: pure, so that the same facts give the same bytes. `facts` is what `issuePaper` froze. */
export type PaperRenderer = (facts: unknown, issuedAt: string) => Promise<Uint8Array>;

/** Draws all editions of a paper. Its module exports it as `draw`, and knows nothing but plain values. */
export type DrawPaper = (facts: unknown, issuedAt: string, edition: string) => Promise<Uint8Array>;

/** The renderers of all kinds and editions; each room adds its own. An edition that was used is kept for ever. */
@Injectable()
export class PaperRenderers {
  private readonly renderers = new Map<string, PaperRenderer>();
  private readonly urls = new Map<string, string>();

  add(kind: string, edition: string, renderer: PaperRenderer): void {
    const name = `${kind}/${edition}`;
    if (this.renderers.has(name)) throw new Error(`two renderers for ${name}`);
    this.renderers.set(name, renderer);
  }

  /**
   * Adds one for papers of many lines, which keep everybody waiting while they are drawn: that is done in a thread.
   *
   * @param url the `import.meta.url` of the module that exports `draw`
   */
  addBeside(kind: string, edition: string, { draw, url }: { readonly draw: DrawPaper; readonly url: string }): void {
    this.add(kind, edition, (facts, issuedAt) => draw(facts, issuedAt, edition));
    this.urls.set(`${kind}/${edition}`, url);
  }

  of(kind: string, edition: string): PaperRenderer {
    const renderer = this.renderers.get(`${kind}/${edition}`);
    if (renderer === undefined) throw new Error(`no renderer for ${kind}/${edition}`);
    return renderer;
  }

  /** The module that draws such a paper in a thread; null: it is drawn in the server. */
  besideOf(kind: string, edition: string): string | null {
    return this.urls.get(`${kind}/${edition}`) ?? null;
  }
}
