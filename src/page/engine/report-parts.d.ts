/** Made by the build from the report's scripts and type. */
declare module 'virtual:report-parts' {
  export const clientScript: string;
  export const listeningScript: string;
  export const filesScript: string;
  export const weeksScript: string;
  export const fontFaces: string;
}
