// Asks the language library, before it looks, not to watch the editor's process: that would wake this one every three seconds.
// An editor that ends closes our input, and that says the same.
process.argv = process.argv.filter((word) => !word.startsWith('--clientProcessId'));

export {};
