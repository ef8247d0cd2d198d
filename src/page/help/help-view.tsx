/** What the page does and doesn't, in plain words. */
export function HelpView() {
  return <h1>How it works</h1>;
}
