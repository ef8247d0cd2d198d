/// <reference types="vite/client" />

/** A page of the help, made of its file by `build/help-pages.ts`. */
declare module '*.md?html' {
  const html: string;
  export default html;
}
