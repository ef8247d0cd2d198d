/** A page that shows the report inside itself can't print it: it asks the report to print itself. */
export function printWhenAsked(): void {
  addEventListener('message', ({ data, source }) => {
    if (data === 'print' && source === parent && parent !== window) print();
  });
}
