/**
 * `npm start`: builds the page and serves it on this machine only, until Ctrl-C.
 * PORT asks for a port (default 4173; the next free one is taken if it is in use, 0 picks any);
 * `--folder <path>` builds into another folder than dist.
 */
import { parseArgs } from 'node:util';
import { build, preview } from 'vite';
import { projectRoot } from './install.mjs';

const DEFAULT_PORT = 4173;

const { values } = parseArgs({ options: { folder: { type: 'string', default: 'dist' } } });
const port = Number(process.env.PORT ?? DEFAULT_PORT);
if (!Number.isInteger(port) || port < 0 || port > 65535) {
  process.stderr.write(`PORT must be a whole number from 0 to 65535, got "${process.env.PORT}"\n`);
  process.exit(1);
}

console.log('Building the page …');
const outDir = values.folder;
await build({ root: projectRoot, logLevel: 'warn', build: { outDir, emptyOutDir: true } });

const server = await preview({
  root: projectRoot,
  logLevel: 'warn',
  build: { outDir },
  preview: { host: '127.0.0.1', port, strictPort: false },
});
const address = server.httpServer.address();
if (address === null || typeof address === 'string') throw new Error('the server has no port');
console.log(`Proof-Mass Bench runs at http://127.0.0.1:${address.port}/ (Ctrl-C ends it)`);

for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.once(signal, () => {
    server.httpServer.close();
    process.exit(0);
  });
}
