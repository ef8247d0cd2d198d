import { defineConfig } from 'vitest/config';

/** A browser that plays and records in real time loses sound where others take the processor. */
const inRealTime = [
  'tests/browser/microphone-habits.test.ts',
  'tests/browser/page-recovery.test.ts',
  'tests/browser/page-reference.test.ts',
  'tests/browser/page-rising.test.ts',
  'tests/browser/page-take.test.ts',
  'tests/browser/page-update.test.ts',
  'tests/browser/recording-interruptions.test.ts',
  'tests/browser/recording.test.ts',
];

const shared = {
  testTimeout: 60_000,
  // Browsers start slowly on a busy machine.
  hookTimeout: 60_000,
  pool: 'threads',
} as const;

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          ...shared,
          name: 'checks',
          include: ['tests/**/*.test.ts'],
          exclude: inRealTime,
          maxWorkers: 2,
          // Modules keep no state but what is worked out once; loading them anew for each file took half of the time.
          isolate: false,
          sequence: { groupOrder: 0 },
        },
      },
      {
        test: {
          ...shared,
          name: 'in real time',
          include: inRealTime,
          maxWorkers: 1,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
