import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { findRigsRequest, readFileRequest, type FindRigsParams, type FindRigsResult, type ReadFileParams, type ReadFileResult } from './protocol.ts';

const largestWorkspace = 5000;

async function readFile({ uri }: ReadFileParams): Promise<ReadFileResult> {
  try {
    const bytes = await vscode.workspace.fs.readFile(vscode.Uri.parse(uri, true));
    try {
      return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
    } catch {
      return { problem: 'not-utf8' };
    }
  } catch (error) {
    const code = error instanceof vscode.FileSystemError ? error.code : '';
    return { problem: code === 'FileNotFound' ? 'missing' : code === 'FileIsADirectory' ? 'directory' : 'unreadable' };
  }
}

async function findRigs({ documents }: FindRigsParams): Promise<FindRigsResult> {
  const found = await (documents === true ? vscode.workspace.findFiles('**/*.{md,markdown}', '**/node_modules/**', largestWorkspace) : vscode.workspace.findFiles('**/*.rig', undefined, largestWorkspace));
  return { uris: found.map((uri) => uri.toString()).sort(), isCut: found.length === largestWorkspace };
}

/** The server in a browser has no disk, and on a desktop it cannot see a folder that only the editor can reach. */
export function answerFileRequests(client: BaseLanguageClient): vscode.Disposable[] {
  return [client.onRequest(readFileRequest, readFile), client.onRequest(findRigsRequest, findRigs)];
}
