// node audit.mjs: asks the registry for known holes in what an installed program brings along (`npm audit`). Ends with 1
// where there are any; a registry that has no advisories answers nothing, which is said and is no pass.
import { spawnSync } from 'node:child_process';

const { stdout } = spawnSync('npm', ['audit', '--omit=dev', '--json'], {
  encoding: 'utf8',
  shell: true,
  timeout: 120_000,
});
const answer = JSON.parse(stdout || '{}');
const counts = answer.metadata?.vulnerabilities;
if (counts === undefined) {
  console.log(
    `NOT AUDITED: ${answer.message ?? 'npm gave no answer'}. Run it against a registry with advisories.`,
  );
} else {
  for (const [name, { severity, range }] of Object.entries(answer.vulnerabilities))
    console.log(`${severity}: ${name} ${range}`);
  console.log(`${counts.total} known holes in what is installed`);
  process.exitCode = counts.total > 0 ? 1 : 0;
}
