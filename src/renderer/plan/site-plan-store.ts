/**
 * The promoter's site plan as a picture beneath the drawing. It is kept in this browser or window alone, one for a booking or a venue:
 * it is somebody else's drawing, it is large, and no figure depends on it.
 */
export interface SitePlan {
  readonly key: string;
  readonly name: string;
  readonly picture: Blob;
  /** Pixels of the picture. */
  readonly width: number;
  readonly height: number;
  /** Where its middle lies in the field's own axes, m. */
  readonly x: number;
  readonly y: number;
  /** m to one of its pixels. */
  readonly scale: number;
  /** ° anticlockwise. */
  readonly turned: number;
  readonly opacity: number;
}

const open = (): Promise<IDBDatabase> =>
  new Promise((resolve, reject) => {
    const asked = indexedDB.open('fieldback', 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore('site-plans', { keyPath: 'key' });
    asked.onsuccess = () => resolve(asked.result);
    asked.onerror = () => reject(asked.error ?? new Error('the browser keeps no pictures'));
  });

const act = async <Value>(mode: IDBTransactionMode, how: (store: IDBObjectStore) => IDBRequest<Value>): Promise<Value> => {
  const database = await open();
  try {
    return await new Promise<Value>((resolve, reject) => {
      const work = database.transaction('site-plans', mode);
      const asked = how(work.objectStore('site-plans'));
      // A request that was answered can still be taken back with its transaction, by a full disk for instance.
      work.oncomplete = () => resolve(asked.result);
      work.onabort = () => reject(work.error ?? new Error('the browser keeps no pictures'));
    });
  } finally {
    database.close();
  }
};

export const readSitePlan = async (key: string): Promise<SitePlan | null> => {
  try {
    return ((await act('readonly', (store) => store.get(key))) as SitePlan | undefined) ?? null;
  } catch {
    // Without storage there is none.
    return null;
  }
};

/** Whether it was kept; without storage it stays on the sheet until the page closes. */
export const keepSitePlan = async (plan: SitePlan): Promise<boolean> => {
  try {
    await act('readwrite', (store) => store.put(plan));
    return true;
  } catch {
    return false;
  }
};

export const dropSitePlan = async (key: string): Promise<void> => {
  try {
    await act('readwrite', (store) => store.delete(key));
  } catch {
    // Nothing was kept.
  }
};
