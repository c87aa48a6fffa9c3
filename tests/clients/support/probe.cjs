// Loaded into the server before itself: tells what it waits for and what it has opened, when it is asked by a signal.
const { writeFileSync } = require('node:fs');
const opened = [];
for (const [module, names] of [['node:net', ['connect', 'createConnection', 'createServer']], ['node:http', ['request', 'get']], ['node:https', ['request', 'get']], ['node:dgram', ['createSocket']], ['node:dns', ['lookup']], ['node:child_process', ['spawn', 'exec', 'execFile', 'fork']]]) {
  const exported = require(module);
  for (const name of names) {
    const real = exported[name];
    exported[name] = (...given) => {
      opened.push(`${module}.${name}`);
      return real(...given);
    };
  }
}
process.on('SIGUSR2', () => {
  const { user, system } = process.cpuUsage();
  writeFileSync(process.env.LINEWRIGHT_PROBE, JSON.stringify({ waits: process.getActiveResourcesInfo(), opened, cpu_ms: (user + system) / 1000 }));
});
