import type { Answer } from '#shared/contract/failure.ts';

/** One way to reach an application, opened on one workspace file. */
export interface OpenDoor {
  answer(name: string, request: unknown): Promise<Answer<unknown>>;
  close(): Promise<void>;
}

export interface DoorSetting {
  /** Path of the workspace; often not there yet. */
  readonly file: string;
  /** ms to wait for another program's write. A door that cannot be told may wait as long as it does by default. */
  readonly waitMs: number;
}

export interface Door {
  readonly name: string;
  /** Whether a job can be asked about after the answer that began it. A door that ends with each answer gives ended jobs. */
  readonly keepsJobs: boolean;
  open(setting: DoorSetting): Promise<OpenDoor>;
}
