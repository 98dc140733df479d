/**
 * Eclipses of the Moon, for the whole Earth, in universal time.
 *
 * Origin: Fred Espenak, NASA Goddard Space Flight Center, "Lunar Eclipses: 2001 to 2100" (sunearth.gsfc.nasa.gov, as kept
 * on 2008-02-29), by way of astronomy-engine's own test data (repository cosinekitty/astronomy, generate/eclipse/le2001.html,
 * commit 822b922). A work of the United States government; figures only are carried over. An excerpt.
 *
 * In each line: greatest eclipse; T, P or N (penumbral); umbral magnitude; half the length of the partial and of the
 * total part in minutes, 0 for none; the Moon's right ascension in hours and declination in degrees, seen from the
 * Earth's centre.
 */
export const NASA_LUNAR_ECLIPSES = `
2001-07-05T14:55 P 0.499 80 0 18.99 -23.4
2003-11-09T01:19 T 1.022 106 12 2.93 16.3
2007-03-03T23:21 T 1.238 111 37 10.96 6.9
2010-12-21T08:17 T 1.261 105 37 5.95 23.7
2012-06-04T11:03 P 0.376 64 0 16.86 -21.7
2017-02-11T00:44 N -0.030 0 0 9.64 13.1
2018-07-27T20:22 T 1.614 118 52 20.47 -19.0
2021-05-26T11:19 T 1.016 94 9 16.24 -20.7
2021-11-19T09:03 P 0.979 105 0 3.67 19.2
2025-09-07T18:12 T 1.368 105 41 23.11 -6.0
2026-03-03T11:33 T 1.156 104 30 10.94 6.4
2026-08-28T04:13 P 0.935 99 0 22.44 -9.3
2028-07-06T18:19 P 0.394 71 0 19.11 -23.3
2028-12-31T16:52 T 1.252 105 36 6.77 23.3
`;

/**
 * Eclipses of the Sun at a place, in universal time.
 *
 * Origin: Fred Espenak, eclipsewise.com, the circumstances of the eclipses of 2017-08-21, 2023-04-20, 2024-04-08 and
 * 2024-10-02 for places, as gathered in astronomy-engine's own test data (repository cosinekitty/astronomy,
 * generate/eclipse/local_solar_eclipse.txt, commit 366a004). Figures only.
 *
 * In each line: latitude and longitude in degrees; partial, annular or total; then instant and the Sun's altitude in
 * degrees when it begins, when the total or annular part begins (`-` for none), at its greatest, when that part ends, and
 * when it ends.
 */
export const ESPENAK_SOLAR_ECLIPSES = `
28.553160 -81.364510 partial 2017-08-21T17:19:28 73 - 0 2017-08-21T18:51:17 64 - 0 2017-08-21T20:14:57 48
29.0181 -80.9481 partial 2024-04-08T17:48:08 67.9 - 0 2024-04-08T19:04:48 58.3 - 0 2024-04-08T20:18:34 44.0
41.0341 -83.6523 total 2024-04-08T17:55:52 56.3 2024-04-08T19:10:42 50.5 2024-04-08T19:12:34 50.3 2024-04-08T19:14:27 50.1 2024-04-08T20:26:37 39.6
32.3066 -64.7503 partial 2024-04-08T18:26:16 51.8 - 0 2024-04-08T19:34:26 38.8 - 0 2024-04-08T20:37:34 25.8
-48.2051 -70.6549 annular 2024-10-02T19:00:27 35.6 2024-10-02T20:22:16 24.1 2024-10-02T20:25:26 23.6 2024-10-02T20:28:35 23.1 2024-10-02T21:42:37 11.2
4.6622 170.8101 partial 2023-04-20T04:42:21 28.7 - 0 2023-04-20T05:54:27 11.0 - 0 2023-04-20T06:57:32 -4.4
`;
