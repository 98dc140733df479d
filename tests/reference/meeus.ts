/**
 * Worked examples of Jean Meeus, Astronomical Algorithms, 2nd edition (Willmann-Bell 1998). Julian Ephemeris Days count
 * terrestrial (dynamical) time: subtract delta T for universal time. Values quoted from memory of the book.
 */
export const MEEUS = {
  /** Example 49.a: new Moon of February 1977. */
  newMoon1977: 2443192.65118,
  /** Example 49.b: last quarter of January 2044. */
  lastQuarter2044: 2467636.49186,
  /** Example 27.a: June solstice of 1962. */
  juneSolstice1962: 2437837.39245,
  /** Example 48.a: the Moon on 1992 April 12 at 0h dynamical time. Right ascensions and declinations are apparent. */
  moon1992: {
    julianDay: 2448724.5,
    sun: { rightAscension: 20.6579, declination: 8.6964 },
    moon: { rightAscension: 134.6885, declination: 13.7684 },
    phaseAngle: 69.0756,
    litFraction: 0.6786,
    /** Position angle of the middle of the bright limb, degrees. */
    brightLimb: 285.0,
  },
  /** Example 53.a: the same instant, position angle of the Moon's axis, degrees. */
  axis1992: 15.08,
} as const;

/**
 * Delta T in seconds for these examples: 1962 and 1977 and 1992 from the table of chapter 10; 2044 by the polynomial of
 * Espenak and Meeus (NASA, 2006) for 2005 to 2050, which astronomy-engine uses too.
 */
export const DELTA_T_SECONDS = {
  y1962: 34,
  y1977: 47.6,
  y1992: 58.7,
  y2044: 62.92 + 0.32217 * 44 + 0.005589 * 44 ** 2,
};
