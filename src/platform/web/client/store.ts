/** What stays on the device, also when the browser is closed or the battery is empty. */
const databaseName = 'packthread';
const databaseVersion = 1;

export type Shelf = 'entries' | 'proofs' | 'ssccs' | 'lists' | 'pages';

/** What the plant would miss; the rest can be fetched again. */
const mustLast: ReadonlySet<Shelf> = new Set(['entries', 'proofs', 'ssccs']);

let opening: Promise<IDBDatabase> | null = null;

function open(): Promise<IDBDatabase> {
  opening ??= new Promise((resolve, reject) => {
    const request = indexedDB.open(databaseName, databaseVersion);
    request.onupgradeneeded = () => {
      const { result } = request;
      result.createObjectStore('entries', { keyPath: 'order', autoIncrement: true });
      result.createObjectStore('proofs', { keyPath: 'personId' });
      result.createObjectStore('ssccs', { keyPath: 'sscc' });
      result.createObjectStore('lists', { keyPath: 'name' });
      result.createObjectStore('pages', { keyPath: ['personId', 'path'] });
    };
    request.onsuccess = () => {
      const { result } = request;
      // Another version wants the database: let it, and open anew when asked.
      result.onversionchange = () => {
        result.close();
        opening = null;
      };
      resolve(result);
    };
    request.onerror = () => {
      opening = null;
      reject(asError(request.error));
    };
  });
  return opening;
}

/**
 * Runs one step on a shelf. It is done when it is written: for what must last, when the data are on disk, as far as the
 * browser can tell.
 */
export async function onShelf<Answer>(
  shelf: Shelf,
  mode: IDBTransactionMode,
  step: (store: IDBObjectStore) => IDBRequest<Answer>,
): Promise<Answer> {
  const database = await open();
  return new Promise((resolve, reject) => {
    const transaction = database.transaction(shelf, mode, {
      durability: mode === 'readwrite' && mustLast.has(shelf) ? 'strict' : 'relaxed',
    });
    const request = step(transaction.objectStore(shelf));
    transaction.oncomplete = () => {
      resolve(request.result);
    };
    transaction.onabort = () => {
      reject(asError(transaction.error));
    };
    transaction.onerror = () => {
      reject(asError(transaction.error));
    };
  });
}

/** Everything on a shelf, by its key. */
export function allOn<Row>(shelf: Shelf): Promise<Row[]> {
  return onShelf(shelf, 'readonly', (store) => store.getAll() as IDBRequest<Row[]>);
}

function asError(error: DOMException | null): Error {
  return error ?? new Error('the store of the device failed');
}
