/** What happened on the page after a take was stopped, ms after the press. */
export interface Moments {
  readonly verdict: number;
  /** The report stands in the page. */
  readonly report: number;
  /** The engine was asked to grade, and answered. */
  readonly asked: number;
  readonly answered: number;
}

/** Runs in the page: leaves in `told` when what happens, from the first key on. */
export function watchVerdict(): void {
  const told = { pressed: 0, verdict: 0, report: 0, asked: 0, answered: 0 };
  Object.assign(globalThis, { told });
  const since = () => Math.round(performance.now() - told.pressed);
  const pressed = () => {
    told.pressed = performance.now();
  };
  addEventListener('keydown', pressed, { capture: true });
  const look = () => {
    if (told.pressed === 0) return;
    if (told.verdict === 0 && document.querySelector('.result-verdict')) told.verdict = since();
    if (told.report === 0 && document.querySelector('iframe.report')) told.report = since();
  };
  new MutationObserver(look).observe(document, { subtree: true, childList: true });
  const post = Worker.prototype.postMessage as (...message: unknown[]) => void;
  Worker.prototype.postMessage = function (this: Worker, ...message: unknown[]) {
    const [sent] = message as [{ readonly body?: { readonly wish?: string } }];
    if (sent?.body?.wish?.startsWith('grade')) {
      told.asked = since();
      this.addEventListener('message', ({ data }) => {
        if (data?.body?.answer === 'result') told.answered = since();
      });
    }
    post.apply(this, message);
  };
}
