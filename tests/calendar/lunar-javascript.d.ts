/** The little of lunar-javascript that the tests use; the package brings no types. */
declare module 'lunar-javascript' {
  interface LunarMonth {
    getYear(): number;
    /** 1 to 12; negative for a leap month. */
    getMonth(): number;
    getDayCount(): number;
    /** Julian day number of the first day (at noon). */
    getFirstJulianDay(): number;
  }
  export const LunarYear: { fromYear(year: number): { getMonths(): LunarMonth[] } };
}
