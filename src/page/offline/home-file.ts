/** What a host says of where takes are kept: nothing, or the library that it holds. Never kept for later. */
export const homeFile = 'home.json';
