/** A place on the Moon: degrees of longitude (east positive, -90 to 90 on the near side) and of latitude (north positive). */
export type LunarPlace = readonly [longitudeDegrees: number, latitudeDegrees: number];

/** One patch of dark lava plain as the drawing shows it. */
export interface LunarSea {
  readonly name: string;
  /** Points of the shore, clockwise as seen from the northern hemisphere, so that seas that overlap add up to one patch. */
  readonly shore: readonly LunarPlace[];
}

/**
 * Shores of the larger lunar seas, in selenographic degrees without libration.
 * Source: drawn by hand, from memory, around the centres and diameters that the IAU Gazetteer of Planetary
 * Nomenclature gives (values from memory too; they stand beside the check in tests/drawing/lunar-seas.test.ts).
 * Good to about 3 degrees: right for finding a sea with the eye, not for measuring. Neighbours that flow into one
 * another overlap or share one shore: Procellarum holds Insularum, Cognitum and Sinus Roris.
 */
export const lunarSeas: readonly LunarSea[] = [
  {
    name: 'Mare Crisium',
    shore: [
      [49.5, 17.5],
      [52, 22],
      [58, 24],
      [65, 22.5],
      [69, 18],
      [67, 12.5],
      [60, 10],
      [52.5, 12],
    ],
  },
  {
    name: 'Mare Serenitatis',
    shore: [
      [6.5, 27],
      [8.5, 33],
      [13.5, 37.5],
      [21, 38.5],
      [27, 36],
      [30, 30],
      [29, 23],
      [25.5, 17.5],
      [20, 17],
      [13.5, 18],
      [9, 21.5],
    ],
  },
  {
    name: 'Mare Tranquillitatis',
    shore: [
      [16.5, 6],
      [18, 13],
      [23, 20],
      [30, 19],
      [37, 21],
      [41.5, 15],
      [46.5, 8],
      [45, 1.5],
      [38, -1.5],
      [32, -6],
      [26, -5.5],
      [23, 0],
    ],
  },
  {
    name: 'Mare Nectaris',
    shore: [
      [28.5, -15],
      [30.5, -10.5],
      [35, -9],
      [40, -11],
      [41, -16],
      [38, -20.5],
      [32.5, -20.5],
    ],
  },
  {
    name: 'Mare Fecunditatis',
    shore: [
      [42, 0],
      [47, 4.5],
      [53, 6],
      [59, 2],
      [63, -4],
      [60, -10],
      [59, -15.5],
      [55, -21],
      [50, -21.5],
      [47.5, -15.5],
      [42, -12],
      [40.5, -6],
    ],
  },
  {
    name: 'Mare Vaporum',
    shore: [
      [0, 13],
      [2.5, 17],
      [7, 16],
      [8.5, 12],
      [4.5, 9],
    ],
  },
  {
    name: 'Sinus Aestuum',
    shore: [
      [-13, 11],
      [-9.5, 14.5],
      [-5, 12],
      [-6, 8],
      [-11, 7.5],
    ],
  },
  {
    name: 'Mare Imbrium',
    shore: [
      [-41, 37],
      [-39.5, 43],
      [-35, 47.5],
      [-29.5, 46],
      [-19, 50.5],
      [-10, 52],
      [-2, 48.5],
      [2.5, 43.5],
      [8, 39.5],
      [6.5, 34],
      [4, 27],
      [0, 22.5],
      [-12, 15],
      [-20, 16],
      [-29, 16.5],
      [-36, 23],
      [-39, 30],
    ],
  },
  {
    name: 'Oceanus Procellarum',
    shore: [
      [-43.5, 38],
      [-36, 33],
      [-35, 26],
      [-32, 17],
      [-23, 14],
      [-14, 12.5],
      [-10.5, 6],
      [-12, 0],
      [-18, -4],
      [-17, -11],
      [-22, -17],
      [-30, -15.5],
      [-37, -12.5],
      [-43, -16],
      [-49, -13],
      [-57, -10],
      [-62, -5],
      [-68, 8],
      [-70, 17],
      [-76, 24],
      [-77, 34],
      [-71, 43],
      [-67, 51],
      [-57, 55],
      [-47, 51],
      [-43, 45],
    ],
  },
  {
    name: 'Mare Nubium',
    shore: [
      [-27, -17],
      [-16, -13],
      [-8, -15],
      [-6.5, -22],
      [-11, -29],
      [-20, -29.5],
      [-27, -24],
    ],
  },
  {
    name: 'Mare Humorum',
    shore: [
      [-46, -24],
      [-44, -19],
      [-38.5, -17.5],
      [-33, -20.5],
      [-32, -26],
      [-36, -30.5],
      [-42.5, -29.5],
    ],
  },
  {
    name: 'Mare Frigoris',
    shore: [
      [-46, 56],
      [-32, 61],
      [-16, 62],
      [0, 62.5],
      [28, 58.5],
      [38, 55],
      [32, 51],
      [20, 54],
      [6, 56],
      [-8, 55.5],
      [-34, 53.5],
      [-46, 52.5],
    ],
  },
  {
    name: 'Grimaldi',
    shore: [
      [-71, -5],
      [-68.5, -1.5],
      [-65.5, -5],
      [-68, -9],
    ],
  },
];

/**
 * Young craters that the eye finds on a full Moon. Those in a sea show as a bright spot; Tycho, in the bright south,
 * by the dark collar round it.
 * Source: IAU Gazetteer of Planetary Nomenclature, centres rounded to half a degree, from memory.
 */
export const youngCraters: readonly { readonly name: string; readonly place: LunarPlace; readonly collar: boolean }[] =
  [
    { name: 'Copernicus', place: [-20, 9.5], collar: false },
    { name: 'Kepler', place: [-38, 8], collar: false },
    { name: 'Aristarchus', place: [-47.5, 23.5], collar: false },
    { name: 'Tycho', place: [-11.5, -43.5], collar: true },
  ];
