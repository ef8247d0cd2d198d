import { fileURLToPath } from 'node:url';
import { Command } from 'commander';
import { ownAddress } from '../server/page-answer.ts';
import { readPageFiles } from '../server/page-files.ts';
import { listen, pageServer } from '../server/page-server.ts';
import { CommandFault } from './command-fault.ts';
import { type CommandOutput, toProcess } from './command-output.ts';

/** The browser keeps takes by address, so the port stays the same from day to day. */
const usualPort = 4807;
const mostPort = 65_535;

const help = `
Examples:
  evenhand serve
  evenhand serve --port 4900

The page opens in a browser on this computer and nowhere else; nothing leaves it. Keep to one
port: takes that the browser keeps belong to the address they were made under.
`;

/**
 * The command that serves the page to this computer until it is interrupted. Throws `CommandFault` for a port that
 * can't be understood or is taken, and where the page isn't built.
 *
 * @example await serveCommand(output).parseAsync(['--port', '4807'], { from: 'user' })
 */
export function serveCommand(output: CommandOutput = toProcess): Command {
  return new Command('serve')
    .description('Open the practice page on this computer: play to a click, record, see, keep.')
    .option('--port <number>', 'port to serve it on; 0 takes any free one', `${usualPort}`)
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr })
    .action(async ({ port }: { readonly port: string }) => {
      const wanted = portFrom(port);
      const server = pageServer(builtPage());
      const taken = await listen(server, wanted).catch((error: NodeJS.ErrnoException) => {
        throw new CommandFault('fault', listenSentence(error, wanted));
      });
      output.stdout(`The page is at http://${ownAddress}:${taken}/\n`);
      output.stderr('Open it in a browser on this computer. Ctrl+C ends it.\n');
      await new Promise<void>((resolve) => {
        for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
      });
      server.closeAllConnections();
      server.close();
    });
}

function portFrom(text: string): number {
  const port = Number(text);
  if (/^\d{1,5}$/.test(text) && port <= mostPort) return port;
  throw new CommandFault(
    'usage',
    `--port ${text} is no port. Choose a whole number from 1024 to ${mostPort}, or 0 for any free one.`,
  );
}

function listenSentence({ code, message }: NodeJS.ErrnoException, port: number): string {
  if (code === 'EADDRINUSE')
    return `Port ${port} is taken by another program. Stop that program, or choose another port: evenhand serve --port ${Math.min(port + 1, mostPort)}`;
  if (code === 'EACCES')
    return `Port ${port} may not be used by this user. Choose a port above 1023, such as --port ${usualPort}.`;
  return `The page could not be served on port ${port}: ${message}.`;
}

/** The page beside the built program, or in `dist` seen from the source. */
function builtPage() {
  for (const place of ['./page', '../../dist/page']) {
    try {
      const files = readPageFiles(fileURLToPath(new URL(place, import.meta.url)));
      if (files.has('/')) return files;
    } catch {
      // Not there; the other place may be.
    }
  }
  throw new CommandFault(
    'fault',
    'The page has not been built. Run `npm run build`, which makes it in dist/page.',
  );
}
