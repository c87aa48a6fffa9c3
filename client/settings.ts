import * as vscode from 'vscode';

export const serverTrace = (): string => vscode.workspace.getConfiguration('linewright').get('trace.server', 'off');
