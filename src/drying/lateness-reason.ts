/** What was entered off line and sent as happened is late for that reason, where none was given. */
export function latenessReason(form: {
  readonly reason?: string | null;
  readonly happened?: boolean | null;
}): string | null {
  return form.reason ?? (form.happened === true ? 'entered off line' : null);
}
