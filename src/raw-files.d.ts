/** A file taken into the bundle as text. */
declare module '*?raw' {
  const text: string;
  export default text;
}
