import { dropEntry, entries, putEntry, type Entry } from './entries.js';
import { replay, tellEntriesChanged, whenEntriesChange } from './replay.js';
import { hourText, say } from './words.js';

/** The list of what was entered on this device, with where each entry is: everybody's, for the tablet is shared. */
export function showEntries(): void {
  const body = document.querySelector<HTMLElement>('#entries tbody');
  const none = document.getElementById('no-entries');
  if (body === null) return;
  const show = async (): Promise<void> => {
    const all = (await entries()).reverse();
    body.replaceChildren(...all.map(rowOf));
    const table = document.getElementById('entries');
    if (table !== null) table.hidden = all.length === 0;
    if (none !== null) none.hidden = all.length > 0;
  };
  whenEntriesChange(() => void show());
  document.getElementById('send-now')?.addEventListener('click', () => void replay());
}

function rowOf(entry: Entry): HTMLTableRowElement {
  const row = document.createElement('tr');
  row.dataset['key'] = entry.key;
  const cells = [
    hourText(entry.madeAt),
    wordOf(entry),
    entry.name,
    say(`browser-entry-${entry.state}`),
    entry.said ?? '',
  ];
  row.append(
    ...cells.map((text, place) => {
      const cell = document.createElement(place === 0 ? 'th' : 'td');
      if (place === 0) cell.setAttribute('scope', 'row');
      cell.textContent = text;
      return cell;
    }),
  );
  const acts = document.createElement('td');
  if (entry.state === 'refused') {
    acts.append(button(say('browser-entry-again'), () => putEntry({ ...entry, state: 'on-device', faults: 0 })));
    acts.append(button(say('browser-entry-put-away'), () => dropEntry(entry)));
  }
  row.append(acts);
  return row;
}

/** What was entered, in the catalogue's word, with the code that it was about. */
function wordOf({ word, fields }: Entry): string {
  const entered = new URLSearchParams(fields);
  const about = entered.get('bag') ?? entered.get('sscc') ?? '';
  const name = say(`browser-word-${word}`);
  return `${name === `browser-word-${word}` ? word : name} ${about}`.trim();
}

function button(says: string, act: () => Promise<void>): HTMLButtonElement {
  const made = document.createElement('button');
  made.type = 'button';
  made.className = 'plain';
  made.textContent = says;
  made.addEventListener('click', () => {
    void act().then(tellEntriesChanged).then(replay);
  });
  return made;
}
