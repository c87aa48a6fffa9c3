import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { fencesRequest, type FencesParams, type FencesResult } from './protocol.ts';

// Of the preview's own library only what is used here is named.
interface Token {
  readonly type: string;
  readonly info: string;
  content: string;
}
interface State {
  readonly src: string;
  readonly env?: { readonly currentDocument?: vscode.Uri };
  tokens: Token[];
  readonly Token: new (type: string, tag: string, nesting: number) => Token;
}
interface MarkdownIt {
  readonly core: { readonly ruler: { push(name: string, rule: (state: State) => void): void } };
}

interface Shown {
  /** The text that the fences were asked for; empty when they are to be asked for again. */
  text: string;
  fences: readonly string[];
}

/** A preview is drawn with each key; the server is asked when the typing rests. */
const settle_ms = 250;
const mostDocuments = 20;

const isRigFence = ({ type, info }: Token): boolean => type === 'fence' && /^rig\b/i.test(info.trim());

/**
 * Pictures and findings under the rig fences of a Markdown preview. A preview is drawn at once and the server answers later:
 * until then it shows what it knew, and it is drawn again when there is something new.
 */
export function addMarkdownPreview(context: vscode.ExtensionContext, client: BaseLanguageClient, startServer: () => Promise<void>): { extendMarkdownIt<T>(md: T): T } {
  const shown = new Map<string, Shown>();
  const waiting = new Map<string, ReturnType<typeof setTimeout>>();

  const ask = async (key: string, params: FencesParams): Promise<void> => {
    await startServer();
    const { fences } = await client.sendRequest<FencesResult>(fencesRequest, params);
    const before = shown.get(key)?.fences ?? [];
    shown.delete(key);
    shown.set(key, { text: params.text, fences });
    for (const oldest of shown.keys()) if (mostDocuments < shown.size) shown.delete(oldest);
    if (JSON.stringify(before) !== JSON.stringify(fences)) await vscode.commands.executeCommand('markdown.preview.refresh');
  };

  const fencesOf = (uri: string | undefined, text: string): readonly string[] => {
    const key = uri ?? '';
    const known = shown.get(key);
    if (known?.text !== text) {
      clearTimeout(waiting.get(key));
      const later = setTimeout(() => {
        waiting.delete(key);
        // A preview without our part is still a preview; the log of the client has the reason.
        void ask(key, uri === undefined ? { text } : { uri, text }).catch(() => undefined);
      }, known === undefined ? 0 : settle_ms);
      waiting.set(key, later);
    }
    return known?.fences ?? [];
  };

  context.subscriptions.push(
    { dispose: () => waiting.forEach((timer) => clearTimeout(timer)) },
    vscode.workspace.onDidSaveTextDocument(({ languageId }) => {
      if (languageId !== 'rig' || shown.size === 0) return;
      // A document may use the rig that was saved.
      for (const document of shown.values()) document.text = '';
      void vscode.commands.executeCommand('markdown.preview.refresh');
    }),
  );

  return {
    extendMarkdownIt(md) {
      (md as unknown as MarkdownIt).core.ruler.push('linewright', (state) => {
        if (!state.tokens.some(isRigFence)) return;
        const fences = fencesOf(state.env?.currentDocument?.toString(), state.src);
        let at = 0;
        state.tokens = state.tokens.flatMap((token) => {
          if (!isRigFence(token)) return [token];
          const under = new state.Token('html_block', '', 0);
          under.content = fences[at++] ?? '';
          return under.content === '' ? [token] : [token, under];
        });
      });
      return md;
    },
  };
}
