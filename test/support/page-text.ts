/** What a page says, without its markup, spaces and thin spaces alike made one. */
export function pageText(html: string): string {
  return html.replaceAll(/<[^>]+>/g, ' ').replaceAll(/[\s\u2009\u202f]+/g, ' ');
}

/** What a page's form carries in hidden fields, as a browser would send it again. */
export function hiddenFields(html: string): Record<string, string> {
  const form = /<form[^>]*class="entry"[\s\S]*?<\/form>/.exec(html)?.[0] ?? '';
  const fields = [...form.matchAll(/<input type="hidden" name="(\w+)" value="([^"]*)"/g)];
  return Object.fromEntries(fields.map(([, name = '', value = '']) => [name, value]));
}
