import type { CancellationToken } from 'vscode-languageserver';
import type { LanguageServer } from './language-server.ts';
import { fences } from './requests-fences.ts';
import { navigation } from './requests-navigation.ts';
import { editing } from './requests-editing.ts';
import { loadPath } from './requests-load-path.ts';
import { pages } from './requests-pages.ts';
import { pictures } from './requests-pictures.ts';

/** Answers one request. Whatever it cannot make sense of it answers with the fallback. */
export type Answer = (server: LanguageServer, params: never, token: CancellationToken) => unknown;

/** Every request by its method. */
export const requests: Readonly<Record<string, Answer>> = { ...navigation, ...editing, ...loadPath, ...pages, ...fences, ...pictures };
