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

/**
 * Eclipses of the Sun at a place, in universal time, as NASA published them for cities.
 *
 * Origin: tables of local circumstances by Fred Espenak (with J. Anderson) in NASA's eclipse bulletins, read in stored
 * copies of NASA's pages in 2026. Works of the United States government; figures only; a few places of hundreds.
 * - 1997: "Total Solar Eclipse of 1997 March 9", table 11a (umbra.nascom.nasa.gov/eclipse/970309/tables/table_11.html).
 * - 1999: RP 1398, table 21 (eclipse.gsfc.nasa.gov/SEpubs/19990811/tables/table_21.html).
 * - May 2003: TP 2002-211618, table 1.7 (eclipse.gsfc.nasa.gov/SEpubs/20030000/tables/table_1.7.html).
 * - November 2003: the same, the table of Australia (umbra.nascom.nasa.gov/eclipse/2003/tables/table_2.8.html).
 * - 2006: TP 2004-212762, table 16, by way of a public repository that copied the row with its source
 *   (Biblejustin/astronomical-signs, tests/fixtures/nasa_reference_values.json, commit c7c2643).
 *
 * In each line: the place; latitude and longitude in degrees and minutes of arc, metres above the sea (0 where none is
 * printed); partial or annular; the first contact and the Sun's altitude then, `rise` for a Sun that is still down; the
 * second contact; the greatest eclipse, altitude and azimuth; the third contact; the fourth and the altitude; magnitude
 * and obscuration. Altitudes and azimuths are whole degrees, `-` is what the table does not have. Chittagong's greatest
 * is the sunrise, to the minute: the eclipse was past its greatest by then.
 */
export const NASA_SOLAR_PLACES = `
Angkor-Wat 13:26 103:52 0 partial - - - 1997-03-08T23:57:33.7 9 97 - - - 0.262 0.156
Chittagong 22:20 91:50 0 partial rise - - 1997-03-09T00:08:00.0 0 95 - - - 0.482 0.375
Oslo 59:55 10:45 94 partial 1999-08-11T09:24:38.1 41 - 1999-08-11T10:35:29.3 45 164 - 1999-08-11T11:47:14.0 45 0.718 0.651
Trondheim 63:25 10:25 127 partial 1999-08-11T09:28:29.4 38 - 1999-08-11T10:35:17.5 41 164 - 1999-08-11T11:42:50.1 42 0.637 0.553
Bialystok 53:09 23:09 0 partial 1999-08-11T09:35:51.1 51 - 1999-08-11T10:53:57.7 52 188 - 1999-08-11T12:10:34.7 48 0.822 0.781
Bielsko-Biala 49:49 19:02 0 partial 1999-08-11T09:28:29.2 52 - 1999-08-11T10:50:01.0 56 180 - 1999-08-11T12:10:38.9 52 0.931 0.920
Akranes 64:18 -22:02 0 annular rise - 2003-05-31T04:02:43.6 2003-05-31T04:04:31.6 2 36 2003-05-31T04:06:19.5 2003-05-31T05:01:36.2 6 0.968 0.880
Akureyri 65:44 -18:08 0 annular 2003-05-31T03:07:19.5 1 2003-05-31T04:01:59.7 2003-05-31T04:03:48.1 4 40 2003-05-31T04:05:36.4 2003-05-31T05:01:44.8 8 0.967 0.881
Bakkafjordur 66:04 -14:45 0 annular 2003-05-31T03:05:29.7 2 2003-05-31T04:00:33.4 2003-05-31T04:02:20.6 5 42 2003-05-31T04:04:07.7 2003-05-31T05:00:46.2 9 0.964 0.881
Adelaide -34:55 138:35 6 partial 2003-11-23T20:55:10.8 16 - 2003-11-23T21:41:04.8 25 98 - 2003-11-23T22:30:15.9 35 0.438 0.328
Auburn -33:51 151:02 0 partial 2003-11-23T21:02:02.2 27 - 2003-11-23T21:42:22.4 36 92 - 2003-11-23T22:25:17.6 45 0.259 0.154
Ballarat -37:34 143:52 0 partial 2003-11-23T20:59:48.2 22 - 2003-11-23T21:46:36.6 31 93 - 2003-11-23T22:36:47.4 41 0.418 0.306
Jerusalem 31:46 35:14 809 partial 2006-03-29T09:37:42.1 - - 2006-03-29T10:56:42.0 57 - - 2006-03-29T12:13:19.5 - 0.832 0.799
`;

/**
 * Eclipses of the Moon, in universal time to the second: the contacts with the umbra.
 *
 * Origin: NASA's plots of the Five Millennium Canon of Lunar Eclipses (Espenak and Meeus), as written out in a public
 * repository with the plots beside them (Biblejustin/astronomical-signs, tests/fixtures/nasa_reference_values.json,
 * commit c7c2643). In each line: partial part begins, total part begins and ends (`-` for none), partial part ends.
 */
export const NASA_LUNAR_CONTACTS = `
2006-09-07T18:05:47 - - 2006-09-07T19:36:53
2015-09-28T01:07:11 2015-09-28T02:11:10 2015-09-28T03:23:05 2015-09-28T04:27:03
`;

/**
 * Eclipses of the Moon at 31 degrees 46 minutes N, 35 degrees 14 minutes E, in universal time.
 *
 * Origin: NASA's Lunar Eclipse Explorer (Fred Espenak and Chris O'Byrne, version of 2007), run unchanged and reported by
 * a public repository (Biblejustin/astronomical-signs, report of its eclipse monitor as of 2026-09-06).
 *
 * In each line: greatest eclipse; partial or total; the Moon's altitude then in degrees, seen from the place but without
 * air, to a tenth; minutes of the partial and of the total part while the Moon is up; moonset where it cuts the eclipse.
 */
export const NASA_LUNAR_PLACE = `
2028-01-12T04:12:56 partial 5.8 56.0 0 -
2028-07-06T18:19:40 partial 15.4 141.5 0 -
2028-12-31T16:51:58 total 25.3 208.8 71.3 -
2029-06-26T03:22:05 total -9.1 62.0 3.1 2029-06-26T02:34:17
2029-12-20T22:41:54 total 72.9 213.3 53.7 -
2030-06-15T18:33:15 partial 18.8 144.4 0 -
`;
