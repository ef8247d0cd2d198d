/** A file that is added to; every `add` that has come back survives the end of the tab. */
export interface PrivateFile {
  add(bytes: Uint8Array<ArrayBuffer>): Promise<void>;
  close(): Promise<void>;
}

/** The compiler's list of what pages have leaves out what only workers have. */
interface SyncHandle {
  write(bytes: Uint8Array<ArrayBuffer>, options: { at: number }): number;
  flush(): void;
  close(): void;
}
type WorkerFileHandle = FileSystemFileHandle & { createSyncAccessHandle?(): Promise<SyncHandle> };

const full = () => new DOMException('no room', 'QuotaExceededError');

/**
 * Opens a private file for adding. A synchronous handle writes in place: what it has written is the file, whatever
 * becomes of the tab. A writable stream writes to a copy that takes the file's place only when it is closed, so where
 * there is nothing better it is opened and closed for each addition.
 */
export async function openPrivateFile(handle: FileSystemFileHandle): Promise<PrivateFile> {
  const open = (handle as WorkerFileHandle).createSyncAccessHandle;
  return open === undefined ? byStreams(handle) : inPlace(await open.call(handle));
}

function inPlace(file: SyncHandle): PrivateFile {
  let end = 0;
  return {
    async add(bytes) {
      const written = file.write(bytes, { at: end });
      if (written < bytes.length) throw full();
      end += written;
      file.flush();
    },
    async close() {
      file.close();
    },
  };
}

function byStreams(handle: FileSystemFileHandle): PrivateFile {
  let end = 0;
  return {
    async add(bytes) {
      const stream = await handle.createWritable({ keepExistingData: end > 0 });
      await stream.write({ type: 'write', position: end, data: bytes });
      await stream.close();
      end += bytes.length;
    },
    async close() {},
  };
}
