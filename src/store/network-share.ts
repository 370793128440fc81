import { statfsSync } from 'node:fs';
import { dirname } from 'node:path';

/** Kinds of file systems that lie on another machine, by the number Linux gives them (`statfs(2)`): NFS, SMB, CIFS, SMB2, AFS, Coda. */
const kindsElsewhere: ReadonlySet<number> = new Set([0x6969, 0x517b, 0xff534d42, 0xfe534d42, 0x5346414f, 0x73757245]);

export const isKindElsewhere = (kind: number): boolean => kindsElsewhere.has(kind >>> 0);

/**
 * Whether a workspace lies on another machine, as far as the system tells: on Linux by the kind of the file system, on Windows by a
 * path that begins with two backslashes. A write-ahead log is shared through memory, which two machines do not have in common.
 */
export const isElsewhere = (file: string, platform: NodeJS.Platform = process.platform): boolean => {
  if (platform === 'win32') return /^\\\\[^?.]/.test(file);
  if (platform !== 'linux') return false;
  try {
    return isKindElsewhere(statfsSync(dirname(file)).type);
  } catch {
    return false;
  }
};
