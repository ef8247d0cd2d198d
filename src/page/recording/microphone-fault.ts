type MicrophoneFaultCode = 'denied' | 'none' | 'in-use' | 'insecure' | 'unsupported' | 'gone' | 'not-opened';

/** Why there is no microphone, with a sentence that says what to do. */
export interface MicrophoneFault {
  readonly code: MicrophoneFaultCode;
  readonly sentence: string;
}

const sentences: Readonly<Record<MicrophoneFaultCode, string>> = {
  denied:
    "The browser may not use the microphone. Allow it in the browser's settings for this page (often a sign beside the address), then try again.",
  none: 'No microphone was found. Plug one in or switch it on, then try again.',
  'in-use': 'Another program has the microphone. End calls and other recorders, then try again.',
  insecure:
    'Browsers open the microphone only on a safe connection. Open this page under an address that begins with https://, or on this device under localhost.',
  unsupported: "This browser can't record. Use a current version of any common browser.",
  gone: "The microphone chosen last time isn't there any more. Choose another one.",
  'not-opened': 'The microphone could not be opened. Unplug it and plug it in again, or load the page anew.',
};

export const microphoneFault = (code: MicrophoneFaultCode): MicrophoneFault => ({
  code,
  sentence: sentences[code],
});

/** Names that the Media Capture standard gives its refusals (W3C Media Capture and Streams, getUserMedia). */
const codes: Readonly<Record<string, MicrophoneFaultCode>> = {
  NotAllowedError: 'denied',
  SecurityError: 'denied',
  NotFoundError: 'none',
  NotReadableError: 'in-use',
  AbortError: 'in-use',
  OverconstrainedError: 'gone',
};

/**
 * The fault behind an error of `getUserMedia`.
 *
 * @example faultOfError({ name: 'NotFoundError' }).code // 'none'
 */
export const faultOfError = (error: unknown): MicrophoneFault => {
  const name = typeof error === 'object' && error !== null && 'name' in error ? String(error.name) : '';
  return microphoneFault(codes[name] ?? 'not-opened');
};
