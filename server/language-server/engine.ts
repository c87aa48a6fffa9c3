/** What is loaded behind the first answer: everything that reads and judges rigs. */
export { LanguageServer } from './language-server.ts';
/** What answers everything else than whether a rig is right: loaded for the first who asks. */
export const requests = async () => (await import('./requests.ts')).requests;
