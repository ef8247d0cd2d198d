/** Hz. That of telephone recorders; below it a stroke has no attack left to find. Common practice. */
export const lowestSampleRate = 8_000;
