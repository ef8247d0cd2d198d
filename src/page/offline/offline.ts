/** Lets the page be opened without a net from now on. `ready` is called when a newer version waits to take over. */
export async function keepOffline(ready: (takeOver: () => void) => void): Promise<void> {
  if (!('serviceWorker' in navigator)) return;
  const registration = await navigator.serviceWorker.register('./service-worker.js').catch(() => null);
  if (registration === null) return;
  const offer = () => {
    const { waiting } = registration;
    if (waiting === null || navigator.serviceWorker.controller === null) return;
    ready(() => {
      navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
      waiting.postMessage('take-over');
    });
  };
  offer();
  registration.addEventListener('updatefound', () => {
    registration.installing?.addEventListener('statechange', offer);
  });
}
