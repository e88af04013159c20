/** Who works on this page and on which device, as the frame of the page says. */
export interface WhoIsHere {
  readonly personId: string;
  readonly name: string;
  /** Null where the device is not enrolled. */
  readonly deviceId: string | null;
}

/** Null on pages before the sign-in. */
export function whoIsHere(): WhoIsHere | null {
  const { person, name, device } = document.body.dataset;
  return person === undefined ? null : { personId: person, name: name ?? '', deviceId: device ?? null };
}

/** The token that forms of this page carry. */
export function csrfToken(): string {
  return document.body.dataset['csrf'] ?? '';
}
