import type { Message } from 'vscode-languageserver';
import { isRange } from './positions.ts';

interface Change extends Message {
  readonly method: string;
  readonly params: { readonly textDocument: { readonly uri: string; readonly version: unknown }; readonly contentChanges: readonly unknown[] };
}

/** A change of which every part can be taken. Of another one it is told that it makes no sense: it stays by itself. */
function isChange(message: unknown): message is Change {
  const { method, params } = (message ?? {}) as { readonly method?: unknown; readonly params?: { readonly textDocument?: { readonly uri?: unknown }; readonly contentChanges?: unknown } };
  if (method !== 'textDocument/didChange' || typeof params?.textDocument?.uri !== 'string' || !Array.isArray(params.contentChanges)) return false;
  return (params.contentChanges as ({ readonly range?: unknown; readonly text?: unknown } | null)[]).every((change) => typeof change?.text === 'string' && (change.range === undefined || isRange(change.range)));
}

/** Changes of one document with nothing between them as one change, which leaves it at the version of the last. */
export function joinChanges(messages: readonly Message[]): Message[] {
  if (messages.length < 2) return [...messages];
  const joined: Message[] = [];
  let last: { readonly uri: string; readonly changes: unknown[] } | undefined;
  for (const message of messages) {
    if (!isChange(message)) {
      last = undefined;
      joined.push(message);
      continue;
    }
    const { textDocument, contentChanges } = message.params;
    if (last?.uri === textDocument.uri) joined.pop();
    else last = { uri: textDocument.uri, changes: [] };
    for (const change of contentChanges) last.changes.push(change);
    joined.push({ ...message, params: { ...message.params, contentChanges: last.changes } } as Message);
  }
  return joined;
}
