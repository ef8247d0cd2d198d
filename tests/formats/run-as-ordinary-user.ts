import { execFileSync } from 'node:child_process';
import { join } from 'node:path';

/**
 * Calls a function of a module of src/formats in a process of its own that has no more rights than any user, even
 * where the tests run as root, and gives back its result by way of JSON.
 */
export function runAsOrdinaryUser(module: string, name: string, argument: string): unknown {
  const nobody = 65534;
  const script = `
    import { ${name} } from ${JSON.stringify(join(import.meta.dirname, '../../src/formats', module))};
    if (process.getuid() === 0) process.setgroups([]), process.setgid(${nobody}), process.setuid(${nobody});
    console.log(JSON.stringify(await ${name}(${JSON.stringify(argument)})));`;
  const args = ['--import', 'tsx', '--input-type=module', '-e', script];
  return JSON.parse(execFileSync(process.execPath, args, { encoding: 'utf8' }));
}
