/** The text of a file, which the build puts in place. */
declare module '*?raw' {
  const text: string;
  export default text;
}
