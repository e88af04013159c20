let words: ReadonlyMap<string, string> | null = null;

/** Loads the texts of the page's language: scripts say nothing of their own. Kept by browsers like every module. */
export async function loadWords(): Promise<void> {
  if (words !== null) return;
  const language = document.documentElement.lang === 'es' ? 'es' : 'en';
  const answer = await fetch(new URL(`../../../words/${language}.json`, import.meta.url));
  words = new Map(Object.entries((await answer.json()) as Record<string, string>));
}

/** The sentence for a code, its facts filled in. */
export function say(code: string, facts: Readonly<Record<string, string | number>> = {}): string {
  const text = words?.get(code) ?? code;
  return text.replaceAll(/\{(\w+)\}/g, (whole, name: string) => String(facts[name] ?? whole));
}

/** An instant as the hour and minute of this device's clock. */
export function hourText(at: string): string {
  return new Date(at).toLocaleTimeString(document.documentElement.lang, {
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  });
}
