declare module 'jstat' {
  const jStat: {
    readonly beta: { inv(p: number, alpha: number, beta: number): number };
    readonly studentt: { inv(p: number, degreesOfFreedom: number): number };
  };
  export default jStat;
}
