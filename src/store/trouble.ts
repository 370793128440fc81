/** Why a workspace file could not be opened. The file is as it was. */
export type TroubleKind =
  'newer' | 'not-a-workspace' | 'damaged' | 'missing' | 'locked' | 'read-only' | 'disk-full' | 'migration-failed' | 'unreadable';

export interface Trouble {
  readonly kind: TroubleKind;
  /** One or two sentences for the person: what is wrong and what to do. */
  readonly message: string;
  /** The newest copy that proved good; null where there is none. Looked for only when the file itself cannot be used. */
  readonly newestCopy: string | null;
}

/** Thrown inside the opening and caught by `openStore`. */
export class OpeningRefused extends Error {
  readonly kind: TroubleKind;

  constructor(kind: TroubleKind, message: string) {
    super(message);
    this.name = 'OpeningRefused';
    this.kind = kind;
  }
}
