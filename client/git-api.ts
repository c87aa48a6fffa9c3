import * as vscode from 'vscode';

/** The part of the built-in Git extension's interface, version 1, that is used here. */
export interface GitRepository {
  readonly rootUri: vscode.Uri;
  readonly state: { readonly onDidChange: vscode.Event<void> };
  show(ref: string, path: string): Promise<string>;
}
interface GitApi {
  readonly state: 'uninitialized' | 'initialized';
  readonly onDidChangeState: vscode.Event<string>;
  getRepository(uri: vscode.Uri): GitRepository | null;
}
interface GitExtension {
  readonly enabled: boolean;
  getAPI(version: 1): GitApi;
}

/** Why there is no last commit to speak of, as a sentence for a person. */
export class NoCommit extends Error {}

/** The repository that a file lies in, through the editor's own Git extension: nothing else here starts a program. */
export async function repositoryOf(uri: vscode.Uri): Promise<GitRepository> {
  const extension = vscode.extensions.getExtension<GitExtension>('vscode.git');
  if (extension === undefined) throw new NoCommit(vscode.l10n.t('The last commit cannot be read: this editor has no Git extension, as in a browser or a folder that is on no disk.'));
  const git = extension.isActive ? extension.exports : await extension.activate();
  if (!git.enabled) throw new NoCommit(vscode.l10n.t('The last commit cannot be read: Git is switched off in the settings, or not installed.'));
  const api = git.getAPI(1);
  if (api.state !== 'initialized') {
    await new Promise<void>((done) => {
      const waiting = api.onDidChangeState((state) => {
        if (state !== 'initialized') return;
        waiting.dispose();
        done();
      });
    });
  }
  const repository = api.getRepository(uri);
  if (repository === null) throw new NoCommit(vscode.l10n.t('{0} lies in no Git repository.', uri.path.split('/').at(-1) ?? ''));
  return repository;
}

/** A file as the last commit has it; undefined where that has none. */
export async function committedText(repository: GitRepository, uri: vscode.Uri): Promise<string | undefined> {
  try {
    return await repository.show('HEAD', uri.fsPath);
  } catch {
    return undefined;
  }
}
