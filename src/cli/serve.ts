/**
 * Serves the built site on this machine: `node --import tsx src/cli/serve.ts`.
 * PORT (default 4173) is where the search for a free port starts; HOST (default 127.0.0.1) is the address listened on.
 */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { listenFrom, staticServer } from './static-server.ts';

const folder = fileURLToPath(new URL('../../build', import.meta.url));
if (!existsSync(folder)) {
  console.error('There is no built site yet. Run "npm run build" first, or "npm start", which does both.');
  process.exit(1);
}

const wanted = Number(process.env['PORT'] ?? 4173);
if (!Number.isInteger(wanted) || wanted < 0 || wanted > 65535) {
  console.error(`PORT should be a whole number from 0 to 65535, found "${process.env['PORT']}".`);
  process.exit(1);
}

const host = process.env['HOST'] ?? '127.0.0.1';
const server = staticServer(folder);
const port = await listenFrom(server, wanted, host);
if (wanted !== 0 && port !== wanted) {
  console.log(`Port ${wanted} is taken, so another one is used. Saved progress belongs to one address.`);
}
console.log(
  `Pin & Pivot is at http://${host.includes(':') ? `[${host}]` : host}:${port}/  (stop with Ctrl+C)`,
);

for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.on(signal, () => {
    server.closeAllConnections();
    server.close(() => process.exit(0));
  });
}
