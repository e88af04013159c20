const root = new URL('../../../', import.meta.url).href;

/** A thread loads built JavaScript only; where a module runs as TypeScript (the tests), the built one stands in `dist`. */
export function builtUrl(url: string): string {
  return url.endsWith('.ts') ? `${root}dist/${url.slice(root.length).replace(/\.ts$/, '.js')}` : url;
}
