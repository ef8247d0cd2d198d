import { fileURLToPath } from 'node:url';
import { Command } from 'commander';
import { answerCall } from '../library/answer-call.ts';
import { LibraryFault } from '../library/library-fault.ts';
import { libraryFaultSentence } from '../library/library-fault-sentence.ts';
import { type FolderLibrary, openFolderLibrary } from '../library/open-folder-library.ts';
import { ownAddress } from '../server/page-answer.ts';
import { readPageFiles, withHome } from '../server/page-files.ts';
import { listen, pageServer } from '../server/page-server.ts';
import { CommandFault } from './command-fault.ts';
import { type CommandOutput, toProcess } from './command-output.ts';
import { type LibraryOption, libraryFolder, withLibraryOption } from './library/with-library.ts';

/** The browser keeps takes by address, so the port stays the same from day to day. */
const usualPort = 4807;
const mostPort = 65_535;

const help = `
Examples:
  evenhand serve
  evenhand serve --port 4900
  evenhand serve --in-browser

The page opens in a browser on this computer and nowhere else; nothing leaves it. Takes are kept
in the same library as those of the other commands; with --in-browser the browser keeps them
itself, under this port. While it runs, whoever can use this computer can ask for the page.
`;

interface Options extends LibraryOption {
  readonly port: string;
  readonly inBrowser?: true;
}

/**
 * The command that serves the page, and a library to it, to this computer until it is interrupted. Throws
 * `CommandFault` for a port that can't be understood or is taken, for a library that can't be opened, and where the
 * page isn't built.
 *
 * @example await serveCommand(output).parseAsync(['--port', '4807'], { from: 'user' })
 */
export function serveCommand(output: CommandOutput = toProcess): Command {
  const command = new Command('serve')
    .description('Open the practice page on this computer: play to a click, record, see, keep.')
    .option('--port <number>', 'port to serve it on; 0 takes any free one', `${usualPort}`)
    .option('--in-browser', 'let the browser keep takes itself')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr });
  return withLibraryOption(command).action(async ({ port, inBrowser, library: named }: Options) => {
    const wanted = portFrom(port);
    if (inBrowser && named !== undefined)
      throw new CommandFault('usage', '--library and --in-browser are two places for takes. Choose one.');
    const option: LibraryOption = named === undefined ? {} : { library: named };
    const library = inBrowser ? null : await servedLibrary(option, output);
    const files = library === null ? builtPage() : withHome(builtPage(), library.folder);
    const answer = library === null ? undefined : (message: Uint8Array) => answerCall(library, message);
    const server = pageServer(files, answer);
    const taken = await listen(server, wanted).catch((error: NodeJS.ErrnoException) => {
      throw new CommandFault('fault', listenSentence(error, wanted));
    });
    output.stdout(`The page is at http://${ownAddress}:${taken}/\n`);
    const place = library === null ? 'by the browser' : `in ${library.folder}`;
    output.stderr(`Open it in a browser on this computer. Takes are kept ${place}. Ctrl+C ends it.\n`);
    await new Promise<void>((resolve) => {
      for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
    });
    server.closeAllConnections();
    server.close();
    await library?.close();
  });
}

/** The library for the page; without better-sqlite3 the browser keeps takes, unless a library was named. */
async function servedLibrary(option: LibraryOption, output: CommandOutput): Promise<FolderLibrary | null> {
  try {
    return await openFolderLibrary(libraryFolder(option));
  } catch (error) {
    if (!(error instanceof LibraryFault)) throw error;
    const sentence = libraryFaultSentence(error);
    if (error.code !== 'no-sqlite' || option.library !== undefined) throw new CommandFault('fault', sentence);
    output.stderr(`${sentence} The browser keeps takes meanwhile.\n`);
    return null;
  }
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
