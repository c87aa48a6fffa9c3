import type { Absence } from '../../src-core/project.ts';

export type FileText = { readonly text: string } | { readonly absent: Absence };

/** How the files of one folder are reached; paths are from that folder. */
export interface FolderFiles {
  read(path: string): Promise<FileText>;
  /** Every rig file of the folder. */
  list(): Promise<readonly string[]>;
}

/** Finds the way to a folder's files; undefined when there is none. */
export type OpenFolder = (folderUri: string) => FolderFiles | undefined;
