import { hasSentence, say } from '../platform/sentences/sentences.js';
import { nameCodeOf } from '../platform/web/kit/entry-form.js';

/** What an entry of the journal is about, in words; an action of a later release as it is called. */
export function actionText(action: string): string {
  const code = `action-${action}`;
  return hasSentence(code) ? say(code) : action.replaceAll('-', ' ');
}

/** What an entry was done to: what it is, and the tail of its id, by which two of a kind are told apart. */
export function subjectText(kind: string, id: string): string {
  return `${say(kind)} ${idText(id)}`;
}

/** The tail of an id, for people. */
export function idText(id: string): string {
  return `…${id.slice(-6)}`;
}

/** Canonical text as people read it: names and values that are known, without the signs of JSON; ids by their tail. */
export function contentText(text: string): string {
  return text
    .replaceAll(/"\w+":null(,|(?=\}))/g, '')
    .replaceAll(/,(?=[}\]])/g, '')
    .replaceAll(',', ', ')
    .replaceAll(/"(\w+)":/g, (_, name: string) => `${nameText(name)}: `)
    .replaceAll(/[{}[\]"]/g, '')
    .replaceAll(/[0-9a-f]{8}-[0-9a-f-]{21}([0-9a-f]{6})/g, '…$1')
    .slice(0, 400);
}

/** What the journal calls what it holds: in words where the catalogue has some, an id by what it is of, else as it is stored. */
function nameText(name: string): string {
  const code = nameCodeOf(name).replace('field-name-', 'journal-name-');
  const known = [code, code.replace(/-ids?$/, ''), nameCodeOf(name)].find((one) => hasSentence(one));
  return known === undefined ? name.replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`) : say(known);
}
