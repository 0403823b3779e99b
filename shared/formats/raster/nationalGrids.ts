/** A projected system of the small table: its EPSG code, names a .prj file may give it, and its PROJ definition. */
export interface NationalGrid {
  readonly epsg: number;
  readonly name: string;
  readonly alias?: RegExp;
  readonly definition: string;
  /** How far positions may be out because the datum is shifted by seven numbers instead of a national grid of shifts. */
  readonly uncertainM?: number;
}

/**
 * Common national grids. Parameters from memory, each checked in the tests against PROJ's own database as Debian ships it.
 * UTM zones are computed from their codes instead.
 */
export const nationalGrids: readonly NationalGrid[] = [
  {
    epsg: 27700,
    name: 'OSGB36 / British National Grid',
    alias: /british_?national_?grid/i,
    definition:
      '+proj=tmerc +lat_0=49 +lon_0=-2 +k=0.9996012717 +x_0=400000 +y_0=-100000 +ellps=airy +towgs84=446.448,-125.157,542.06,0.15,0.247,0.842,-20.489 +units=m',
    uncertainM: 5,
  },
  {
    epsg: 2157,
    name: 'IRENET95 / Irish Transverse Mercator',
    alias: /irenet95.*irish_?transverse_?mercator/i,
    definition: '+proj=tmerc +lat_0=53.5 +lon_0=-8 +k=0.99982 +x_0=600000 +y_0=750000 +ellps=GRS80 +units=m',
  },
  {
    epsg: 2154,
    name: 'RGF93 / Lambert-93',
    alias: /rgf_?(19)?93.*lambert_?93/i,
    definition:
      '+proj=lcc +lat_0=46.5 +lon_0=3 +lat_1=49 +lat_2=44 +x_0=700000 +y_0=6600000 +ellps=GRS80 +units=m',
  },
  {
    epsg: 28992,
    name: 'Amersfoort / RD New',
    alias: /rd_?new/i,
    definition:
      '+proj=sterea +lat_0=52.1561605555556 +lon_0=5.38763888888889 +k=0.9999079 +x_0=155000 +y_0=463000 +ellps=bessel +towgs84=565.2369,50.0087,465.658,-0.406857330322398,0.350732676542563,-1.8703473836068,4.0812 +units=m',
    uncertainM: 1,
  },
  {
    epsg: 3812,
    name: 'ETRS89 / Belgian Lambert 2008',
    alias: /bel(gian|ge)_?lambert_?2008/i,
    definition:
      '+proj=lcc +lat_0=50.797815 +lon_0=4.35921583333333 +lat_1=49.8333333333333 +lat_2=51.1666666666667 +x_0=649328 +y_0=665262 +ellps=GRS80 +units=m',
  },
  {
    epsg: 3006,
    name: 'SWEREF99 TM',
    alias: /sweref_?99_?tm/i,
    definition: '+proj=utm +zone=33 +ellps=GRS80 +units=m',
  },
  {
    epsg: 3067,
    name: 'ETRS89 / TM35FIN(E,N)',
    alias: /tm35fin/i,
    definition: '+proj=utm +zone=35 +ellps=GRS80 +units=m',
  },
  {
    epsg: 2180,
    name: 'ETRF2000-PL / CS92',
    alias: /(poland_?)?cs92/i,
    definition: '+proj=tmerc +lat_0=0 +lon_0=19 +k=0.9993 +x_0=500000 +y_0=-5300000 +ellps=GRS80 +units=m',
  },
  {
    epsg: 3763,
    name: 'ETRS89 / Portugal TM06',
    alias: /portugal_?tm06|pt-?tm06/i,
    definition:
      '+proj=tmerc +lat_0=39.6682583333333 +lon_0=-8.13310833333333 +k=1 +x_0=0 +y_0=0 +ellps=GRS80 +units=m',
  },
  {
    epsg: 2056,
    name: 'CH1903+ / LV95',
    alias: /ch1903\+?.*lv_?95/i,
    definition:
      '+proj=somerc +lat_0=46.9524055555556 +lon_0=7.43958333333333 +k_0=1 +x_0=2600000 +y_0=1200000 +ellps=bessel +towgs84=674.374,15.056,405.346,0,0,0,0 +units=m',
    uncertainM: 1,
  },
  {
    epsg: 2193,
    name: 'NZGD2000 / New Zealand Transverse Mercator',
    alias: /new_?zealand_?transverse_?mercator/i,
    definition: '+proj=tmerc +lat_0=0 +lon_0=173 +k=0.9996 +x_0=1600000 +y_0=10000000 +ellps=GRS80 +units=m',
  },
  {
    epsg: 3857,
    name: 'WGS 84 / Pseudo-Mercator',
    alias: /pseudo-?_?mercator|web_?mercator/i,
    definition:
      '+proj=merc +a=6378137 +b=6378137 +lat_ts=0 +lon_0=0 +x_0=0 +y_0=0 +k=1 +units=m +nadgrids=@null +no_defs',
  },
];

/** Ranges of codes that are UTM zones: the first code, its zone, how many, and the hemisphere. Ellipsoids agree to 0.1 mm. */
const utmRanges: readonly (readonly [
  first: number,
  zone: number,
  count: number,
  south: boolean,
  datum: string,
])[] = [
  [32601, 1, 60, false, 'WGS 84'],
  [32701, 1, 60, true, 'WGS 84'],
  [25828, 28, 11, false, 'ETRS89'],
  [26901, 1, 23, false, 'NAD83'],
  [6330, 1, 19, false, 'NAD83(2011)'],
  [28348, 48, 11, true, 'GDA94'],
  [7846, 46, 14, true, 'GDA2020'],
];

/** A UTM zone by its EPSG code, or null. */
export function utmOfEpsg(
  code: number,
): { readonly zone: number; readonly south: boolean; readonly datum: string } | null {
  for (const [first, zone, count, south, datum] of utmRanges)
    if (code >= first && code < first + count) return { zone: zone + code - first, south, datum };
  return null;
}

/** Geographic systems that agree with WGS 84 to a metre or two. */
export const geographicCodes: ReadonlySet<number> = new Set([
  4326, 4258, 4269, 4283, 7844, 4167, 4674, 4979, 6318,
]);
