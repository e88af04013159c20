import type { VNode } from 'preact';

/** Why the form below is shown again. Read out at once by a screen reader. */
export function FormTrouble({ sentences }: { readonly sentences: readonly string[] }): VNode | null {
  if (sentences.length === 0) return null;
  return (
    <div class="card refusal" role="alert">
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </div>
  );
}
