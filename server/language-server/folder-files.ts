import type { Absence } from '../../src-core/project.ts';

export type FileText = { readonly text: string } | { readonly absent: Absence };

/** What is looked for in a folder: rigs, or the Markdown documents that may hold some. */
export type Wanted = 'rigs' | 'documents';

export interface Listed {
  readonly paths: readonly string[];
  /** There are more than are read. */
  readonly isCut: boolean;
}

/** How the files of one folder are reached; paths are from that folder. */
export interface FolderFiles {
  read(path: string): Promise<FileText>;
  list(wanted: Wanted): Promise<Listed>;
}

/** Finds the way to a folder's files; undefined when there is none. */
export type OpenFolder = (folderUri: string) => FolderFiles | undefined;
