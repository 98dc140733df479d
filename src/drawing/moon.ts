import type { Element, ElementContent } from 'hast';
import type { MoonView } from '../calendar/almanac-types.ts';
import { type LunarPlace, lunarSeas, youngCraters } from './lunar-seas.ts';
import { roundTo } from './round.ts';
import { shareElement } from './shared-elements.ts';
import { type Point, renderSmoothOutline } from './smooth-outline.ts';
import { svgElement } from './svg-element.ts';

/** What a drawing needs to know of the Moon: how much of it is lit, and how it is turned. */
export type MoonFace = Pick<MoonView, 'litFraction' | 'brightLimbDegrees' | 'northPoleDegrees'>;

/** How to draw the Moon as a picture of its own. */
export interface MoonOptions {
  /** Radius in CSS pixels, above 0 to 2000. The picture is square, twice as wide. */
  readonly radius: number;
  /** What the picture says in words. Without it the picture is hidden from screen readers. */
  readonly title?: string;
  /** BCP 47 tag of the title, when it is not in the language of the page. */
  readonly titleLanguage?: string;
  /** Class beside `moon`. */
  readonly className?: string;
}

/** How to draw the Moon within another picture. */
export interface MoonPartsOptions {
  /** Radius in the units of the picture. */
  readonly radius: number;
  /** Width of the ink line around it, in the same units; a thin crescent gets a thinner one, a full Moon a wider one. */
  readonly rimWidth: number;
  /** `none` up to a radius of about 28 px, `seas`, or `craters` (seas and the bright craters) from about 60 px. */
  readonly detail: 'none' | 'seas' | 'craters';
  /** Id of a path drawn once by `renderSeasOnce`, to be used again instead of being drawn anew. */
  readonly seasId?: string;
}

/** Radius in px from which the seas are drawn, and from which the bright craters are. Chosen by eye. */
const seasFromRadius = 28;
const cratersFromRadius = 60;

/** Radius of the disc in the units of the sea paths. */
const seaScale = 200;

/** Ink colours for a drawing that stands alone; the classes let a page's styles change them. */
const ink = '#1D2433';
const paperWhite = '#FFFEFB';
const seaGrey = '#D3CCBB';

/**
 * Gives the Moon as it stands in the sky as an SVG picture that needs nothing else.
 * The lit limb points `brightLimbDegrees` counter-clockwise from straight up; the seas are turned by
 * `northPoleDegrees`. Libration is left out.
 * @throws RangeError when a number is not finite, the radius is out of range or the lit fraction lies outside 0 to 1
 *   by more than a thousandth.
 */
export function renderMoon(face: MoonFace, options: MoonOptions): Element {
  const { radius, title, titleLanguage, className } = options;
  if (!(radius > 0 && radius <= 2000)) throw new RangeError(`a Moon's radius must be above 0 to 2000, not ${radius}`);
  const detail = radius < seasFromRadius ? 'none' : radius < cratersFromRadius ? 'seas' : 'craters';
  const rimWidth = Math.min(0.9 + radius / 120, radius / 3);
  const parts = renderMoonParts(face, { radius, rimWidth, detail });
  const box = roundTo(radius, 2);
  return svgElement(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `${-box} ${-box} ${2 * box} ${2 * box}`,
      width: 2 * box,
      height: 2 * box,
      className: className === undefined ? ['moon'] : ['moon', className],
      ...(title === undefined ? { ariaHidden: 'true' } : { role: 'img' }),
    },
    title === undefined
      ? parts
      : [svgElement('title', titleLanguage === undefined ? {} : { lang: titleLanguage }, [title]), ...parts],
  );
}

/**
 * Gives the shapes of the Moon around the point 0,0, to be put into another picture.
 * In order: the white disc, the seas, the shade over them, the rim. The shade lets a little through, as earthlight
 * does, so that the seas can be made out in the dark part.
 * @throws RangeError as `renderMoon`.
 */
export function renderMoonParts(face: MoonFace, options: MoonPartsOptions): ElementContent[] {
  const lit = requireLitFraction(face.litFraction);
  const bright = requireAngle(face.brightLimbDegrees);
  const north = requireAngle(face.northPoleDegrees);
  const rimWidth = roundTo(weighRim(lit, options), 2);
  const radius = roundTo(options.radius - rimWidth / 2, 2);
  return [
    svgElement('circle', { className: ['moon-lit'], r: radius, fill: paperWhite }),
    ...(options.detail === 'none' ? [] : [renderSeas(radius, north, options)]),
    ...renderShade(lit, bright, radius, rimWidth),
    svgElement('circle', { className: ['moon-rim'], r: radius, fill: 'none', stroke: ink, strokeWidth: rimWidth }),
  ];
}

/** Gives the seas as a path with an id, for the `defs` of a picture that holds several Moons. */
export function renderSeasOnce(id: string): Element {
  const { seas } = findShapes();
  return { ...seas, properties: { id, ...seas.properties } };
}

/** Shares of a thin crescent's width, and of the rim's own, that the rim takes beside it. Chosen by eye on paper. */
const rimOfCrescent = 0.2;
const thinnestRim = 0.3;

/** A full Moon has no shade to weigh it down: its rim is so many times as wide. Chosen by eye on paper. */
const rimOfFull = 1.5;

/**
 * The rim would hide most of a thin crescent, and ink on both sides of it the rest: there it is thinner. A full Moon is
 * nothing but its rim: there it is wider.
 */
function weighRim(lit: number, { radius, rimWidth }: MoonPartsOptions): number {
  if (hidesSliver(2 * radius * (1 - lit), rimWidth)) return rimWidth * rimOfFull;
  const crescent = 2 * radius * lit;
  if (hidesSliver(crescent, rimWidth)) return rimWidth;
  return Math.min(rimWidth, Math.max(crescent * rimOfCrescent, rimWidth * thinnestRim));
}

/** A sliver narrower than half the rim lies under the rim: it is not drawn at all. */
function hidesSliver(width: number, rimWidth: number): boolean {
  return width <= rimWidth / 2;
}

function renderShade(lit: number, bright: number, radius: number, rimWidth: number): ElementContent[] {
  const look = { className: ['moon-shade'], fill: ink, fillOpacity: 0.93 };
  if (hidesSliver(2 * radius * lit, rimWidth)) return [svgElement('circle', { ...look, r: radius })];
  if (hidesSliver(2 * radius * (1 - lit), rimWidth)) return [];
  return [svgElement('path', { ...look, d: shadePath(lit, radius), transform: turn(bright) })];
}

/**
 * The dark part when the lit limb points straight up: half the limb, then the terminator, half an ellipse with the
 * half-axis |1 - 2k| along the direction of the light (k is the lit fraction). The ends of both arcs are exact, so
 * that rounding cannot bend them.
 */
function shadePath(lit: number, radius: number): string {
  const halfAxis = roundTo(radius * Math.abs(1 - 2 * lit), 2);
  const sweep = lit < 0.5 ? 1 : 0;
  return `M${radius} 0A${radius} ${radius} 0 0 1 ${-radius} 0A${radius} ${halfAxis} 0 0 ${sweep} ${radius} 0z`;
}

function renderSeas(radius: number, north: number, options: MoonPartsOptions): Element {
  const look = {
    className: ['moon-seas'],
    fill: seaGrey,
    transform: `${turn(north)} scale(${roundTo(radius / seaScale, 4)})`,
  };
  const { seas, craters } = findShapes();
  const shape = options.seasId === undefined ? seas : svgElement('use', { href: `#${options.seasId}` });
  return svgElement('g', look, options.detail === 'seas' ? [shape] : [shape, ...craters]);
}

/** SVG turns clockwise, the sky's angles run counter-clockwise. */
function turn(counterClockwiseDegrees: number): string {
  return `rotate(${roundTo(-counterClockwiseDegrees, 1)})`;
}

/** Orthographic projection on the disc of radius `seaScale`, north up, east to the right. */
function projectPlace([longitudeDegrees, latitudeDegrees]: LunarPlace): Point {
  const longitude = (longitudeDegrees * Math.PI) / 180;
  const latitude = (latitudeDegrees * Math.PI) / 180;
  return [seaScale * Math.cos(latitude) * Math.sin(longitude), -seaScale * Math.sin(latitude)];
}

/** Elements that all Moons share, and that must not be changed. */
interface MoonShapes {
  readonly seas: Element;
  /** Collars of young craters, and the bright spots within and beside them. */
  readonly craters: readonly Element[];
}

let shapes: MoonShapes | undefined;

/** The same for every Moon, so made once, when first asked for. */
function findShapes(): MoonShapes {
  shapes ??= {
    seas: sharePath({ d: lunarSeas.map((sea) => renderSmoothOutline(sea.shore.map(projectPlace))).join('') }),
    craters: [
      sharePath({ d: youngCraters.flatMap(({ collar, place }) => (collar ? [writeSpot(place, 8)] : [])).join('') }),
      sharePath({
        className: ['moon-lit'],
        d: youngCraters.map(({ place }) => writeSpot(place, 5)).join(''),
        fill: paperWhite,
      }),
    ],
  };
  return shapes;
}

function sharePath(properties: Readonly<Record<string, string | string[]>>): Element {
  return shareElement(svgElement('path', properties));
}

/** A round spot of some units' radius, about what the rays round a crater brighten. */
function writeSpot(place: LunarPlace, radius: number): string {
  const [x, y] = projectPlace(place);
  const width = 2 * radius;
  const arc = `a${radius} ${radius} 0 1 0`;
  return `M${Math.round(x) - radius} ${Math.round(y)}${arc} ${width} 0${arc}-${width} 0z`;
}

function requireLitFraction(value: number): number {
  if (!(value >= -0.001 && value <= 1.001)) throw new RangeError(`a lit fraction must be 0 to 1, not ${value}`);
  return Math.min(1, Math.max(0, value));
}

function requireAngle(degrees: number): number {
  if (!Number.isFinite(degrees)) throw new RangeError(`an angle must be a finite number of degrees, not ${degrees}`);
  return degrees % 360;
}
