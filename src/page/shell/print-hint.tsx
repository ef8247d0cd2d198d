/** What stands on paper in the place of a page in a frame, which would be cut there. */
export function PrintHint({ button }: { readonly button: string }) {
  return (
    <p class="on-paper">This page isn't meant for paper. "{button}" on it prints what it shows, whole.</p>
  );
}
