import type { CancellationToken } from 'vscode-languageserver';
import { loadedBy, loadedThingAt, loads, type LoadStep, type LoadedThing } from '../../src-core/ide/load-path.ts';
import type { LanguageServer, Subject } from './language-server.ts';
import { isRange } from './positions.ts';
import type { Answer } from './requests.ts';
import { symbolKindNumber } from './to-lsp.ts';

interface Item {
  readonly uri?: unknown;
  readonly selectionRange?: unknown;
}

function toItem({ positions }: LanguageServer, { folder }: Subject, thing: LoadedThing) {
  const { lines } = folder.project.file(thing.named.path)!;
  return { name: thing.name, kind: symbolKindNumber(thing.kind), detail: thing.detail, uri: folder.uriOf(thing.named.path), range: positions.range(lines, thing.whole), selectionRange: positions.range(lines, thing.named) };
}

async function stepsFrom(server: LanguageServer, item: Item | undefined, token: CancellationToken, find: typeof loads): Promise<{ of: Subject; steps: LoadStep[] } | undefined> {
  if (!isRange(item?.selectionRange)) return undefined;
  const of = await server.point({ textDocument: { uri: item.uri }, position: item.selectionRange.start }, token);
  return of === undefined ? undefined : { of, steps: find(of.folder.project, of.path, of.offset, of.day) };
}

const ranges = (server: LanguageServer, of: Subject, step: LoadStep, path: string) => step.joins.filter((j) => j.path === path).map((j) => server.positions.range(of.folder.project.file(j.path)!.lines, j));

/** The path of the load as a hierarchy of calls: what loads this, and what this loads. */
export const loadPath: Readonly<Record<string, Answer>> = {
  async 'textDocument/prepareCallHierarchy'(server: LanguageServer, params: { readonly textDocument?: { readonly uri?: unknown }; readonly position?: unknown }, token: CancellationToken) {
    const at = await server.point(params, token);
    const thing = at === undefined ? undefined : loadedThingAt(at.folder.project, at.path, at.offset, at.day);
    return at === undefined || thing === undefined ? null : [toItem(server, at, thing)];
  },

  async 'callHierarchy/incomingCalls'(server: LanguageServer, params: { readonly item?: Item }, token: CancellationToken) {
    const found = await stepsFrom(server, params.item, token, loadedBy);
    return (found?.steps ?? []).map((step) => ({ from: toItem(server, found!.of, step.thing), fromRanges: ranges(server, found!.of, step, step.thing.named.path) }));
  },

  async 'callHierarchy/outgoingCalls'(server: LanguageServer, params: { readonly item?: Item }, token: CancellationToken) {
    const found = await stepsFrom(server, params.item, token, loads);
    return (found?.steps ?? []).map((step) => ({ to: toItem(server, found!.of, step.thing), fromRanges: ranges(server, found!.of, step, found!.of.path) }));
  },
};
