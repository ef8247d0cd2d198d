import { programVersion } from './program-version.ts';

/** Put in by the build: see `page/build/grading-digest.ts`. Not there where the sources run as they are. */
declare const gradingDigest: string;

/**
 * Which grader gave a result: the program's version, and in what is built a digest of all that grades, which tells builds of
 * one version apart.
 */
export const graderVersion: string =
  typeof gradingDigest === 'undefined' ? programVersion : `${programVersion}+${gradingDigest}`;
