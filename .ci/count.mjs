// node count.mjs RESULTS STATUS: reads Vitest's results (JSON) and the exit status of `npm test`, prints
// "N passed, N failed" and ends with 0 only if tests passed and nothing failed.
import { readFileSync } from 'node:fs';

const [path, status] = process.argv.slice(2);
const text = readFileSync(path, 'utf8');
const { testResults = [] } = text === '' ? {} : JSON.parse(text);
if (text === '') console.log('No test ran: the build or the static checks failed.');

const tests = testResults.flatMap((file) => file.assertionResults);
const count = (wanted) => tests.filter((test) => test.status === wanted).length;
const passed = count('passed');
// A file that breaks before its first test has no failed test of its own.
const broken = testResults.filter(
  (file) => file.status === 'failed' && !file.assertionResults.some((test) => test.status === 'failed'),
);
let failed = count('failed') + broken.length;
// Errors outside of tests, a failed build: the status alone tells of them.
if (failed === 0 && (status !== '0' || passed === 0)) failed = 1;

const others = tests.filter((test) => test.status !== 'passed' && test.status !== 'failed');
for (const test of others) console.log(`${test.status}: ${test.fullName}`);
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
