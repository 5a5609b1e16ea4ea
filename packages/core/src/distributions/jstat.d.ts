declare module 'jstat' {
  const jStat: {
    readonly beta: { inv(p: number, alpha: number, beta: number): number };
  };
  export default jStat;
}
