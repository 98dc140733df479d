/**
 * Moon, Sun, sidereal time and horizon after J. Meeus, Astronomical Algorithms (2nd edition, 1998), chapters 12, 13, 14,
 * 16, 21, 22, 25, 40, 47 and 48: formulas and the larger coefficients from memory. It shares nothing with the engine that the
 * kit computes with. Left out: terms of the Moon under 0.002 degree each, which together come to about 0.01 degree.
 */

const RADIANS = Math.PI / 180;
const sin = (degrees: number) => Math.sin(degrees * RADIANS);
const cos = (degrees: number) => Math.cos(degrees * RADIANS);
const asin = (value: number) => Math.asin(value) / RADIANS;
const atan2 = (y: number, x: number) => Math.atan2(y, x) / RADIANS;

/** D, M, M', F, then the coefficients of longitude (millionths of a degree) and distance (metres): table 47.A. */
const LONGITUDE_TERMS: readonly (readonly [number, number, number, number, number, number])[] = [
  [0, 0, 1, 0, 6288774, -20905355],
  [2, 0, -1, 0, 1274027, -3699111],
  [2, 0, 0, 0, 658314, -2955968],
  [0, 0, 2, 0, 213618, -569925],
  [0, 1, 0, 0, -185116, 48888],
  [0, 0, 0, 2, -114332, -3149],
  [2, 0, -2, 0, 58793, 246158],
  [2, -1, -1, 0, 57066, -152138],
  [2, 0, 1, 0, 53322, -170733],
  [2, -1, 0, 0, 45758, -204586],
  [0, 1, -1, 0, -40923, -129620],
  [1, 0, 0, 0, -34720, 108743],
  [0, 1, 1, 0, -30383, 104755],
  [2, 0, 0, -2, 15327, 10321],
  [0, 0, 1, 2, -12528, 0],
  [0, 0, 1, -2, 10980, 79661],
  [4, 0, -1, 0, 10675, -34782],
  [0, 0, 3, 0, 10034, -23210],
  [4, 0, -2, 0, 8548, -21636],
  [2, 1, -1, 0, -7888, 24208],
  [2, 1, 0, 0, -6766, 30824],
  [1, 0, -1, 0, -5163, -8379],
  [1, 1, 0, 0, 4987, -16675],
  [2, -1, 1, 0, 4036, -12831],
  [2, 0, 2, 0, 3994, -10445],
  [4, 0, 0, 0, 3861, -11650],
  [2, 0, -3, 0, 3665, 14403],
  [0, 1, -2, 0, -2689, -7003],
  [2, 0, -1, 2, -2602, 0],
  [2, -1, -2, 0, 2390, 10056],
  [1, 0, 1, 0, -2348, 6322],
  [2, -2, 0, 0, 2236, -9884],
];

/** D, M, M', F, then the coefficient of latitude in millionths of a degree: table 47.B. */
const LATITUDE_TERMS: readonly (readonly [number, number, number, number, number])[] = [
  [0, 0, 0, 1, 5128122],
  [0, 0, 1, 1, 280602],
  [0, 0, 1, -1, 277693],
  [2, 0, 0, -1, 173237],
  [2, 0, -1, 1, 55413],
  [2, 0, -1, -1, 46271],
  [2, 0, 0, 1, 32573],
  [0, 0, 2, 1, 17198],
  [2, 0, 1, -1, 9266],
  [0, 0, 2, -1, 8822],
  [2, -1, 0, -1, 8216],
  [2, 0, -2, -1, 4324],
  [2, 0, 1, 1, 4200],
  [2, 1, 0, -1, -3359],
  [2, -1, -1, 1, 2463],
  [2, -1, 0, 1, 2211],
  [2, -1, -1, -1, 2065],
];

/** Longitude and latitude on the ecliptic of date, degrees; distance in kilometres. */
interface Ecliptic {
  readonly longitude: number;
  readonly latitude: number;
  readonly distanceKm: number;
}

/** Julian centuries of dynamical time from J2000. */
export function centuriesOf(julianEphemerisDay: number): number {
  return (julianEphemerisDay - 2451545) / 36525;
}

/** Nutation in longitude, degrees: the two largest terms of chapter 22. */
function nutation(t: number): number {
  const node = 125.04452 - 1934.136261 * t;
  return (-17.2 * sin(node) - 1.32 * sin(2 * (280.4665 + 36000.7698 * t))) / 3600;
}

/** The Moon, without nutation: chapter 47. */
export function meanMoon(t: number): Ecliptic {
  const longitude = 218.3164477 + 481267.88123421 * t - 0.0015786 * t * t;
  const d = 297.8501921 + 445267.1114034 * t - 0.0018819 * t * t;
  const m = 357.5291092 + 35999.0502909 * t - 0.0001536 * t * t;
  const mMoon = 134.9633964 + 477198.8675055 * t + 0.0087414 * t * t;
  const f = 93.272095 + 483202.0175233 * t - 0.0036539 * t * t;
  const e = 1 - 0.002516 * t - 0.0000074 * t * t;
  const a1 = 119.75 + 131.849 * t;
  const a2 = 53.09 + 479264.29 * t;
  const a3 = 313.45 + 481266.484 * t;
  let sumLongitude = 3958 * sin(a1) + 1962 * sin(longitude - f) + 318 * sin(a2);
  let sumDistance = 0;
  for (const [kd, km, kMoon, kf, l, r] of LONGITUDE_TERMS) {
    const argument = kd * d + km * m + kMoon * mMoon + kf * f;
    const factor = e ** Math.abs(km);
    sumLongitude += factor * l * sin(argument);
    sumDistance += factor * r * cos(argument);
  }
  let sumLatitude =
    -2235 * sin(longitude) +
    382 * sin(a3) +
    175 * sin(a1 - f) +
    175 * sin(a1 + f) +
    127 * sin(longitude - mMoon) -
    115 * sin(longitude + mMoon);
  for (const [kd, km, kMoon, kf, b] of LATITUDE_TERMS) {
    sumLatitude += e ** Math.abs(km) * b * sin(kd * d + km * m + kMoon * mMoon + kf * f);
  }
  return {
    longitude: longitude + sumLongitude / 1e6,
    latitude: sumLatitude / 1e6,
    distanceKm: 385000.56 + sumDistance / 1000,
  };
}

/** The Sun's apparent longitude, degrees: chapter 25, the method of lower accuracy (0.01 degree). */
export function apparentSunLongitude(t: number): number {
  const m = 357.52911 + 35999.05029 * t - 0.0001537 * t * t;
  const centre = (1.914602 - 0.004817 * t) * sin(m) + (0.019993 - 0.000101 * t) * sin(2 * m) + 0.000289 * sin(3 * m);
  const node = 125.04 - 1934.136 * t;
  return 280.46646 + 36000.76983 * t + 0.0003032 * t * t + centre - 0.00569 - 0.00478 * sin(node);
}

/** Right ascension and declination, degrees: formulas 13.3 and 13.4. */
function toEquator(longitude: number, latitude: number, t: number) {
  const obliquity = 23.4392911 - 0.0130042 * t + 0.00256 * cos(125.04 - 1934.136 * t);
  return {
    rightAscension: atan2(
      sin(longitude) * cos(obliquity) - Math.tan(latitude * RADIANS) * sin(obliquity),
      cos(longitude),
    ),
    declination: asin(sin(latitude) * cos(obliquity) + cos(latitude) * sin(obliquity) * sin(longitude)),
  };
}

/** Apparent sidereal time at Greenwich, degrees: formula 12.4 with nutation. */
function siderealTime(julianDay: number): number {
  const t = centuriesOf(julianDay);
  return 280.46061837 + 360.98564736629 * (julianDay - 2451545) + 0.000387933 * t * t + 0.917 * nutation(t);
}

/** Altitude without air of a point of the sky, seen from the centre of the Earth, degrees: formula 13.6. */
export function altitudeOf(
  point: { readonly rightAscension: number; readonly declination: number },
  julianDay: number,
  latitude: number,
  longitude: number,
): number {
  const hourAngle = siderealTime(julianDay) + longitude - point.rightAscension;
  return asin(sin(latitude) * sin(point.declination) + cos(latitude) * cos(point.declination) * cos(hourAngle));
}

/** Moon and Sun over a place, as the test of the crescent wants them. */
export function skyOver(julianDay: number, deltaTSeconds: number, latitude: number, longitude: number) {
  const t = centuriesOf(julianDay + deltaTSeconds / 86400);
  const moon = meanMoon(t);
  const moonLongitude = moon.longitude + nutation(t);
  const sunLongitude = apparentSunLongitude(t);
  return {
    moonAltitude: altitudeOf(toEquator(moonLongitude, moon.latitude, t), julianDay, latitude, longitude),
    sunAltitude: altitudeOf(toEquator(sunLongitude, 0, t), julianDay, latitude, longitude),
    /** Formula 48.2. */
    elongation: Math.acos(cos(moon.latitude) * cos(moonLongitude - sunLongitude)) / RADIANS,
    /** Chapter 47. */
    parallax: asin(6378.14 / moon.distanceKm),
  };
}

/**
 * How the Moon's bright limb is turned for an observer: counter-clockwise from the zenith, degrees. The position angle
 * from north (formula 48.5) less the parallactic angle (14.1), both of the Moon as seen from the place (40.2 and 40.3).
 */
export function brightLimbFromZenith(julianDay: number, deltaTSeconds: number, latitude: number, longitude: number) {
  const t = centuriesOf(julianDay + deltaTSeconds / 86400);
  const moon = meanMoon(t);
  const point = toEquator(moon.longitude + nutation(t), moon.latitude, t);
  const sun = toEquator(apparentSunLongitude(t), 0, t);
  const u = atan2(0.99664719 * sin(latitude), cos(latitude));
  const rhoSin = 0.99664719 * sin(u);
  const rhoCos = cos(u);
  const sinParallax = 6378.14 / moon.distanceKm;
  const hourAngle = siderealTime(julianDay) + longitude - point.rightAscension;
  const below = cos(point.declination) - rhoCos * sinParallax * cos(hourAngle);
  const shift = atan2(-rhoCos * sinParallax * sin(hourAngle), below);
  const declination = atan2((sin(point.declination) - rhoSin * sinParallax) * cos(shift), below);
  const seenHourAngle = hourAngle - shift;
  const seenRightAscension = point.rightAscension + shift;
  const fromSun = sun.rightAscension - seenRightAscension;
  const fromNorth = atan2(
    cos(sun.declination) * sin(fromSun),
    sin(sun.declination) * cos(declination) - cos(sun.declination) * sin(declination) * cos(fromSun),
  );
  const parallacticAngle = atan2(
    sin(seenHourAngle),
    Math.tan(latitude * RADIANS) * cos(declination) - sin(declination) * cos(seenHourAngle),
  );
  return { brightLimb: fromNorth - parallacticAngle, parallacticAngle };
}

/** A star's place at a date from that of J2000, without proper motion: formulas 21.3 and 21.4, degrees. */
export function precess(rightAscension: number, declination: number, t: number) {
  const zeta = (2306.2181 * t + 0.30188 * t * t) / 3600;
  const z = (2306.2181 * t + 1.09468 * t * t) / 3600;
  const theta = (2004.3109 * t - 0.42665 * t * t) / 3600;
  const a = cos(declination) * sin(rightAscension + zeta);
  const b = cos(theta) * cos(declination) * cos(rightAscension + zeta) - sin(theta) * sin(declination);
  const c = sin(theta) * cos(declination) * cos(rightAscension + zeta) + cos(theta) * sin(declination);
  return { rightAscension: atan2(a, b) + z, declination: asin(c) };
}

/** Refraction for a true altitude, degrees: Saemundsson's formula, 16.4. */
export function refractionAt(altitude: number): number {
  return 1.02 / Math.tan((altitude + 10.3 / (altitude + 5.11)) * RADIANS) / 60;
}
