/** What is loaded behind the first answer: everything that reads and judges rigs. */
export { LanguageServer } from './language-server.ts';
export { requests } from './requests.ts';
