/** Whether a text can be the id of something: a UUID. What is typed is a number else. */
export function isId(text: string): boolean {
  return /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i.test(text.trim());
}
