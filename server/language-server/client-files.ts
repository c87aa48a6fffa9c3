import { findRigsRequest, readFileRequest, type FindRigsParams, type FindRigsResult, type ReadFileResult } from '../../client/protocol.ts';
import { isMarkdownPath } from '../../src-core/ide/markdown-fences.ts';
import type { Absence } from '../../src-core/project.ts';
import type { FolderFiles } from './folder-files.ts';
import { pathIn, readAddress, uriIn } from './uris.ts';

type Ask = <T>(method: string, params: unknown) => Promise<T>;

const absences: Readonly<Record<NonNullable<ReadFileResult['problem']>, Absence>> = {
  missing: 'missing',
  directory: 'a-folder',
  'not-utf8': 'not-text',
  unreadable: 'unreadable',
};

/** Files of a folder that only the editor can reach. */
export function clientFiles(folderUri: string, ask: Ask): FolderFiles {
  const folder = readAddress(folderUri);
  return {
    async read(path) {
      const answer = await ask<ReadFileResult>(readFileRequest, { uri: uriIn(folderUri, path) }).catch((): ReadFileResult => ({ problem: 'unreadable' }));
      return answer?.text !== undefined ? { text: answer.text } : { absent: absences[answer?.problem ?? 'unreadable'] };
    },
    async list(wanted) {
      const asked: FindRigsParams = wanted === 'documents' ? { documents: true } : {};
      const answer = await ask<FindRigsResult>(findRigsRequest, asked).catch((): FindRigsResult => ({ uris: [] }));
      const paths = (answer?.uris ?? []).flatMap((uri) => {
        const address = readAddress(uri);
        const path = folder === undefined || address === undefined ? undefined : pathIn(folder, address);
        return path === undefined || isMarkdownPath(path) !== (wanted === 'documents') ? [] : [path];
      });
      return { paths, isCut: answer?.isCut === true };
    },
  };
}
