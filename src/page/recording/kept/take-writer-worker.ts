import { joinedBytes } from '../../../formats/joined-bytes.ts';
import { openPrivateFile, type PrivateFile } from './private-file.ts';
import { unfinishedFolder, type WriterAnswer, type WriterWish } from './writer-messages.ts';

const scope = globalThis as unknown as {
  postMessage(answer: WriterAnswer): void;
  addEventListener(type: 'message', take: (event: MessageEvent<WriterWish>) => void): void;
};

let file: PrivateFile | null = null;
/** What came while the one before was being written, so that slow files get few and large additions. */
let waiting: WriterWish[] = [];
let busy = false;

scope.addEventListener('message', ({ data }) => {
  waiting.push(data);
  void work();
});

async function work(): Promise<void> {
  if (busy) return;
  busy = true;
  while (waiting.length > 0) {
    const wishes = waiting;
    waiting = [];
    try {
      await write(wishes);
    } catch (error) {
      const isFull = error instanceof DOMException && error.name === 'QuotaExceededError';
      await file?.close().catch(() => undefined);
      file = null;
      waiting = [];
      scope.postMessage(isFull ? { answer: 'full' } : { answer: 'fault', reason: String(error) });
    }
  }
  busy = false;
}

async function write(wishes: readonly WriterWish[]): Promise<void> {
  const parts: Uint8Array<ArrayBuffer>[] = [];
  for (const wish of wishes) {
    if (wish.wish === 'begin') {
      const root = await navigator.storage.getDirectory();
      const folder = await root.getDirectoryHandle(unfinishedFolder, { create: true });
      file = await openPrivateFile(await folder.getFileHandle(wish.file, { create: true }));
      await file.add(wish.bytes);
      scope.postMessage({ answer: 'begun' });
    } else if (wish.wish === 'add') parts.push(wish.bytes);
  }
  if (parts.length > 0) await file?.add(joinedBytes(parts));
  if (wishes.some(({ wish }) => wish === 'end')) {
    await file?.close();
    file = null;
    scope.postMessage({ answer: 'ended' });
  }
}
