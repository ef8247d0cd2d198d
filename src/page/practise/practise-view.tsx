/** Where practising begins: the exercise, the tempo, and the button that starts a take. */
export function PractiseView() {
  return <h1>Practise</h1>;
}
