/**
 * Moonrise and moonset of January 2050 at 45 S, 150 E, sea level, in universal time (`hhmm`); `-` where there is none.
 *
 * Origin: U.S. Naval Observatory, Astronomical Applications Department, "Rise and Set for the Moon for 2050", as kept
 * in astronomy-engine's own test data (repository cosinekitty/astronomy, generate/riseset/moon_2050_E150_S45.html,
 * commit 0be5745). A work of the United States government, in the public domain. An excerpt: the first column.
 *
 * Tolerance for comparisons: 30 s for the rounding to the minute and 60 s for the two computations.
 */
export const USNO_MOON_2050_JANUARY = `
0312 1355
0421 1429
0526 1507
0628 1550
0724 1639
0814 1732
0857 1829
0934 1928
1006 2028
1035 2128
1100 2228
1124 2328
1148 -
1212 0028
1238 0129
1307 0232
1341 0336
1422 0441
1511 0546
1610 0647
1719 0744
1834 0833
1953 0915
2112 0952
2230 1025
2346 1056
- 1126
0059 1157
0210 1231
0318 1308
0421 1350
`;

/** Seconds within which a computed rise or set must agree; see above. */
export const USNO_MOON_TOLERANCE_SECONDS = 90;
