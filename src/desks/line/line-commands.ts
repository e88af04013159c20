/** Words on the laminated card at the line: each is scanned instead of touched. */
const commandWords = {
  STOP: 'stop',
  RUNSAGAIN: 'runs-again',
  PALLETFULL: 'pallet-full',
  EMPTY: 'empty',
  UNDOLAST: 'undo-last',
  HANDOVER: 'hand-over',
} as const;
export type CommandWord = (typeof commandWords)[keyof typeof commandWords];

/** The command of a scanned card; null: it is none. */
export function commandIn(text: string): CommandWord | null {
  const tidy = text.replaceAll(/[\s-]/g, '').toUpperCase().replace(/^CMD/, '');
  return (commandWords as Readonly<Record<string, CommandWord>>)[tidy] ?? null;
}
