void import('./node-engine.ts').then(async ({ languageServer }) => (await languageServer())());

export {};
