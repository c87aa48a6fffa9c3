import type { CancellationToken } from 'vscode-languageserver';
import { picturesRequest, sheetOfTextsRequest, type PicturesResult, type SheetOfTextsResult } from '../../client/protocol.ts';
import { picturesOfFile } from '../../src-core/ide/pictures-at.ts';
import { printDay } from '../../src-core/model/day.ts';
import { sheetText } from '../../src-core/papers/sheet-text.ts';
import { Project } from '../../src-core/project.ts';
import type { LanguageServer } from './language-server.ts';
import { isPosition } from './positions.ts';
import type { Answer } from './requests.ts';
import { addressKey, readAddress } from './uris.ts';

const keyOf = (uri: string): string => {
  const address = readAddress(uri);
  return address === undefined ? uri : addressKey(address);
};

export const pictures: Readonly<Record<string, Answer>> = {
  async [picturesRequest](server: LanguageServer, params: { readonly uri?: unknown; readonly position?: unknown }, token: CancellationToken): Promise<PicturesResult> {
    const of = await server.subject({ textDocument: { uri: params?.uri } }, token);
    if (of === undefined) return { pictures: [], leftOut: 0, broken: [] };
    const { positions } = server;
    const { lines } = of.file;
    const near = isPosition(params.position) && params.position.line < lines.lineCount ? positions.offset(lines, params.position) : 0;
    const found = picturesOfFile(of.folder.project, of.path, of.day, near);
    return {
      pictures: found.pictures.map(({ id, title, description, svg, table, span, broken }) => ({ id, title, description, svg, table, range: positions.range(lines, span), ...(broken === undefined ? {} : { broken: broken.says }) })),
      leftOut: found.leftOut,
      broken: found.broken.map(({ says, span }) => ({ says, range: positions.range(lines, span) })),
    };
  },

  async [sheetOfTextsRequest](server: LanguageServer, params: { readonly uri?: unknown; readonly texts?: unknown }, token: CancellationToken): Promise<SheetOfTextsResult> {
    const { uri, texts } = params;
    const found = typeof uri === 'string' ? server.workspace.locate(uri) : undefined;
    if (found === undefined || token.isCancellationRequested) return { text: '', wants: [] };
    const { folder, path } = found;
    const given = new Map(Object.entries((texts ?? {}) as Record<string, unknown>).map(([address, text]) => [keyOf(address), text]));
    const project = new Project();
    const wants: string[] = [];
    const take = (wanted: string): void => {
      const address = folder.uriOf(wanted);
      const text = given.get(keyOf(address));
      if (typeof text === 'string') project.set(wanted, text);
      else {
        if (text === undefined) wants.push(address);
        project.setAbsent(wanted, 'missing');
      }
    };
    take(path);
    // A rig that another one takes in is judged as part of that.
    const root = folder.project.rootsOf(path)[0] ?? path;
    if (root !== path) take(root);
    for (let wanted = project.wanted(); wanted.length > 0; wanted = project.wanted()) wanted.forEach(take);
    const day = await server.settings.day(folder.uri);
    const of = project.file(root) === undefined || !project.rootsOf(path).includes(root) ? path : root;
    const judged = project.file(path) === undefined ? undefined : project.judge(of, day);
    return { text: sheetText(judged, path, { file: path, day: printDay(day) }), wants };
  },
};
