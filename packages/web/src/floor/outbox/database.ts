/** Shelves of the device: facts to be sent, facts that were, the end of its stream, pictures by their hash. */
const SHELVES = ["waiting", "sent", "single", "pictures"] as const;
type Shelf = (typeof SHELVES)[number];

const NAME = "pinwright-floor";
const VERSION = 1;

/** Resolves with what a request of the database found. */
export const found = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((done, failed) => {
    request.onsuccess = () => done(request.result);
    request.onerror = () => failed(request.error ?? new Error("The device's memory does not answer."));
  });

/** Resolves when everything of a transaction outlives the page. */
export const ended = (transaction: IDBTransaction): Promise<void> =>
  new Promise((done, failed) => {
    const fail = (): void =>
      failed(transaction.error ?? new Error("The device's memory is full or does not answer."));
    transaction.oncomplete = () => done();
    transaction.onabort = fail;
    transaction.onerror = fail;
  });

/** Opens what this device keeps for the floor; asks the browser not to throw it away when room is short. */
export async function openDatabase(): Promise<IDBDatabase> {
  void navigator.storage?.persist?.();
  const request = indexedDB.open(NAME, VERSION);
  request.onupgradeneeded = () => {
    for (const shelf of SHELVES) request.result.createObjectStore(shelf);
  };
  return found(request);
}

/** A transaction that is on the disk when it ends, where the browser can say so. */
export const writing = (database: IDBDatabase, ...shelves: readonly Shelf[]): IDBTransaction =>
  database.transaction([...shelves], "readwrite", { durability: "strict" });
