const cacheName = 'evenhand-shared';

/** Where a phone sends what is shared to the installed page; the manifest says the same. */
export const sharedPath = '/share';

/** How the address ends under which the page finds what was shared. */
export const sharedMark = '?shared';

/** Puts shared recordings aside until the page asks for them, and leads to the takes. */
export async function keepShared(request: Request): Promise<Response> {
  const form = await request.formData();
  const cache = await caches.open(cacheName);
  const files = form.getAll('recordings').filter((entry) => entry instanceof File);
  await Promise.all(
    files.map((file, i) => {
      const headers = { 'content-type': file.type, 'x-name': encodeURIComponent(file.name) };
      return cache.put(`./shared-${Date.now()}-${i}`, new Response(file, { headers }));
    }),
  );
  return Response.redirect(`./#/takes${sharedMark}`, 303);
}

/** The recordings that were shared to the page since it was last asked; they are given once. */
export async function takeSharedFiles(): Promise<File[]> {
  if (!('caches' in globalThis)) return [];
  const cache = await caches.open(cacheName);
  const requests = await cache.keys();
  return Promise.all(
    requests.map(async (request) => {
      const response = (await cache.match(request))!;
      await cache.delete(request);
      const name = decodeURIComponent(response.headers.get('x-name') ?? 'recording');
      return new File([await response.blob()], name, { type: response.headers.get('content-type') ?? '' });
    }),
  );
}
