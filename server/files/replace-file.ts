import { accessSync, chmodSync, chownSync, constants, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { randomUUID } from 'node:crypto';
import { dirname, join } from 'node:path';

/**
 * Writes a file as a whole or not at all: what is there stays until all of the new text is on the disk. `real` is a real
 * path, since a link would be replaced by a file.
 */
export function replaceFile(real: string, text: string): void {
  // A file in a folder of ours can be replaced even where it may not be written.
  accessSync(real, constants.W_OK);
  const { mode, uid, gid } = statSync(real);
  const beside = join(dirname(real), `.${randomUUID()}.linewright`);
  try {
    writeFileSync(beside, text, { flag: 'wx', flush: true });
    keepOwner(beside, uid, gid);
    chmodSync(beside, mode & 0o777);
    renameSync(beside, real);
  } catch (error) {
    rmSync(beside, { force: true });
    throw error;
  }
}

/** Only an administrator may give a file away, and formats files of others. */
function keepOwner(path: string, uid: number, gid: number): void {
  const now = statSync(path);
  if (now.uid === uid && now.gid === gid) return;
  try {
    chownSync(path, uid, gid);
  } catch {
    // It was written by whoever may write it, and is theirs now.
  }
}
