import { describe, expect, it } from 'vitest';
import { setAssignment } from '../../src/library/assignments.ts';
import { listPeople } from '../../src/library/people.ts';
import { listDiscomfort, listPractice } from '../../src/library/practice.ts';
import { withLibrary } from '../library/temporary-library.ts';
import { browserThere } from './chromium.ts';
import { day, demoTake, person, readable, withServedLibrary } from './served-library.ts';

describe.skipIf(!browserThere('people and practice, in the page'))('people and practice, in the page', () => {
  it('people are renamed, made one of two and deleted with their recordings', () =>
    withLibrary(async (library) => {
      const [one, two] = [await person(library, 'Mirele'), await person(library, 'M. Quist')];
      await demoTake(library, 1, one);
      await demoTake(library, 2, two);
      await withServedLibrary(library, 'people', async (page) => {
        const card = page
          .locator('.people > li')
          .filter({ has: page.getByRole('heading', { name: 'Mirele' }) });
        await card.locator('summary').click();
        await card.getByLabel('Name', { exact: true }).fill('Mirelle');
        await card.getByRole('button', { name: 'Rename' }).click();
        await page.getByText('Mirele is called Mirelle now.').waitFor();
        await readable(page, 'dark');

        const other = page
          .locator('.people > li')
          .filter({ has: page.getByRole('heading', { name: 'M. Quist' }) });
        await other.locator('summary').click();
        await other.getByLabel('Is the same person as').selectOption(one);
        await other.getByRole('button', { name: 'Make one of both' }).click();
        await page.getByRole('dialog').getByRole('button', { name: 'Make one of both' }).click();
        await page.getByText('are one now: Mirelle.').waitFor();
        expect((await listPeople(library.db)).map(({ name, takes }) => [name, takes])).toEqual([
          ['Mirelle', 2],
        ]);

        await page.getByRole('button', { name: /^Delete Mirelle/ }).click();
        await page.getByRole('dialog').getByRole('button', { name: 'Leave as it is' }).click();
        expect(await library.audio.list()).toHaveLength(2);
        await page.getByRole('button', { name: /^Delete Mirelle/ }).click();
        await page.getByRole('dialog').getByRole('button', { name: 'Delete for good' }).click();
        await page.getByText('Mirelle is deleted, with 2 takes and their recordings.').waitFor();
        expect(await library.audio.list()).toEqual([]);
        expect(await listPeople(library.db)).toEqual([]);
      });
    }));

  it('practice is written down, a note on discomfort stops advice on tempo, and both can be taken back', () =>
    withLibrary(async (library) => {
      const mirelle = await person(library, 'Mirelle');
      const text = '>RLR >LRL ; times: 4\n';
      await demoTake(library, 1, mirelle);
      const assigned = {
        id: 'a',
        personId: mirelle,
        bpm: 98,
        dueDay: day(-2),
        note: 'Softly',
        setAt: 1,
        doneAt: null,
      };
      await setAssignment(library.db, { ...assigned, sheetText: `title: Week 7\n${text}` });
      await withServedLibrary(library, `practice-time/${mirelle}`, async (page) => {
        await page.getByLabel('Minutes', { exact: true }).fill('25');
        await page.getByRole('button', { name: 'Write it down' }).click();
        await page.getByText('Recorded takes, and minutes written down by hand.').waitFor();
        await page.getByLabel('What, where, since when').fill('left wrist');
        await page.getByRole('button', { name: 'Note it' }).click();
        await page.locator('.written-list').getByText('left wrist').waitFor();
        await readable(page, 'light');
        const days = { personId: mirelle, fromDay: day(2), toDay: day(-2) };
        expect((await listPractice(library.db, days)).map(({ minutes }) => minutes)).toEqual([25]);

        // Where practising begins: who plays, what is due, which tempo is next.
        await page.evaluate((id) => localStorage.setItem('evenhand-player', id), mirelle);
        await page.goto(page.url().replace(/#.*/, '#/'));
        await page.reload();
        await page.getByText('Who plays: Mirelle').waitFor();
        const due = page.locator('.assignments-due');
        await due.getByText(/Week 7: due on .*, in 2 days; played once, on .*, best score 84\./).waitFor();
        await due.getByRole('button', { name: /^Open/ }).click();
        await page.getByText('Open now: Week 7').waitFor();
        await page.getByRole('checkbox', { name: /^Something hurts/, checked: true }).waitFor();
        await page.getByLabel('My own', { exact: true }).check();
        await page.locator('#own-text').fill('>RLR >LRL');
        await page
          .locator('.next-tempo')
          .getByText(/You noted discomfort/)
          .waitFor();
        await readable(page, 'dark');

        await page.goto(page.url().replace(/#.*/, `#/practice-time/${mirelle}`));
        await page.getByRole('button', { name: /^Delete the note/ }).click();
        await page.locator('.written-list').getByText('left wrist').waitFor({ state: 'detached' });
        expect(await listDiscomfort(library.db, days)).toEqual([]);
        await page.goto(page.url().replace(/#.*/, '#/'));
        await page.locator('.next-tempo').getByText('From your takes').waitFor();
        expect(await page.locator('.next-tempo').textContent()).not.toContain('discomfort');
      });
    }));
});
