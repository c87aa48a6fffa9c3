import { fencesRequest, type FencesResult } from '../../client/protocol.ts';
import { fencePreviews } from '../../src-core/ide/fence-preview.ts';
import { rigFences, rigTextOf } from '../../src-core/ide/markdown-fences.ts';
import type { LanguageServer } from './language-server.ts';
import type { Answer } from './requests.ts';
import { Folder } from './workspace.ts';

/** A document of this name is in no folder. */
const nameless = 'document.md';

export const fences: Readonly<Record<string, Answer>> = {
  async [fencesRequest](server: LanguageServer, params: { readonly uri?: unknown; readonly text?: unknown }): Promise<FencesResult> {
    const { workspace, settings } = server;
    const text = typeof params?.text === 'string' ? params.text : '';
    const found = typeof params?.uri === 'string' ? workspace.locate(params.uri) : undefined;
    const { folder, path } = found ?? { folder: new Folder(undefined, undefined, { judged: false, whole: false }), path: nameless };
    const day = await settings.day(folder.uri);
    const shown = rigFences(text);
    const wanted = rigTextOf(text, shown);
    // What the preview shows may be a key older or newer than what was sent of the document, or not open at all.
    const isOpen = (): boolean => folder.open.has(path);
    if (!isOpen()) folder.project.set(path, wanted);
    try {
      await workspace.ready(folder);
      if (folder.project.file(path)?.text !== wanted) return { fences: fencePreviews(folder.project, path, folder.open.get(path)?.fences ?? [], day) };
      return { fences: fencePreviews(folder.project, path, shown, day) };
    } finally {
      if (!isOpen()) folder.project.remove(path);
    }
  },
};
