/** A bank card's width in millimetres (ISO/IEC 7810, ID-1). */
export const cardMillimetres = 85.6;

/** By how many CSS pixels the drawn card is made narrower or wider at a touch. */
export const sizeSteps = [-10, -1, 1, 10] as const;

/** Names the width of a bank card on this device's screen, in tenths of a CSS pixel. */
export const sizeCookie = 'packthread-card';

/** 96 CSS pixels to the inch: what a browser takes where nobody has measured. */
const usualCardTenths = Math.round((cardMillimetres / 25.4) * 960);
const [least, most] = [1200, 12_000];

/** The width of the card on this screen, in tenths of a CSS pixel; the usual where the cookie says nothing of use. */
export function cardTenths(cookie: string | undefined): number {
  const tenths = /^\d{4,5}$/.test(cookie ?? '') ? Number(cookie) : usualCardTenths;
  return within(tenths);
}

/** The next width after a step that somebody asked for, in CSS pixels. */
export function steppedTenths(tenths: number, step: string): number {
  return within(tenths + Number(step) * 10);
}

function within(tenths: number): number {
  return Math.min(most, Math.max(least, tenths));
}

/** A small style sheet that says how many CSS pixels a millimetre has on this screen; empty where nobody measured. */
export function sizeStyle(cookie: string | undefined): string {
  if (cookie === undefined) return '/* the usual size: nobody has measured this screen */\n';
  return `:root{--mm:${(cardTenths(cookie) / 10 / cardMillimetres).toFixed(4)}px}\n`;
}
