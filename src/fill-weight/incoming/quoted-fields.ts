const decoder = new TextDecoder('utf-8', { fatal: true });

/** The fields of a line in which some stand in quotes; null where a quote is not closed or text follows it. */
export function unquoted(line: Uint8Array, separator: string): string[] | null {
  const text = decoded(line);
  if (text === null) return null;
  const fields: string[] = [];
  let rest = text.replace(/\r$/, '');
  for (;;) {
    const quoted = /^"((?:[^"]|"")*)"/.exec(rest);
    const stop = rest.indexOf(separator);
    const [field, length] =
      quoted === null
        ? [stop < 0 ? rest : rest.slice(0, stop), stop < 0 ? rest.length : stop]
        : [(quoted[1] ?? '').replaceAll('""', '"'), quoted[0].length];
    if (field.includes('"') && quoted === null) return null;
    fields.push(field);
    const after = rest.slice(length);
    if (after === '') return fields;
    if (!after.startsWith(separator)) return null;
    rest = after.slice(1);
  }
}

function decoded(line: Uint8Array): string | null {
  try {
    return decoder.decode(line);
  } catch {
    return null;
  }
}
