import proj4 from 'proj4';
import { lonLat, type LonLat } from '../../geometry/points.ts';
import { InputProblem } from '../../words/inputProblem.ts';
import { geographicCodes, nationalGrids, utmOfEpsg } from './nationalGrids.ts';

/** A map projection, or longitude and latitude themselves; x is east. */
export interface CoordinateSystem {
  readonly name: string;
  readonly epsg: number | null;
  readonly geographic: boolean;
  /** Where positions may be out by more than a survey would show; 0 where not. */
  readonly uncertainM: number;
  toLonLat(x: number, y: number): LonLat;
  fromLonLat(at: LonLat): readonly [x: number, y: number];
}

/** The system of an EPSG code. @throws InputProblem `unknown-projection` naming the code */
export function systemOfEpsg(code: number, place: string): CoordinateSystem {
  if (geographicCodes.has(code)) return { ...geographic, epsg: code };
  const utm = utmOfEpsg(code);
  if (utm !== null)
    return projected(
      `${utm.datum} / UTM zone ${String(utm.zone)}${utm.south ? 'S' : 'N'}`,
      code,
      `+proj=utm +zone=${String(utm.zone)} ${utm.south ? '+south ' : ''}+ellps=${utm.datum === 'WGS 84' ? 'WGS84' : 'GRS80'} +units=m`,
      0,
    );
  const national = nationalGrids.find(({ epsg }) => epsg === code);
  if (national !== undefined)
    return projected(national.name, code, national.definition, national.uncertainM ?? 0);
  throw new InputProblem(
    'unknown-projection',
    `its map projection, EPSG:${String(code)}, is not among those known here.`,
    place,
    'Convert it to WGS 84 (EPSG:4326) or its UTM zone first.',
  );
}

/** The system a .prj file or another WKT text names. @throws InputProblem */
export function systemOfWkt(text: string, place: string): CoordinateSystem {
  const wkt = text.trim();
  const code =
    /(?:AUTHORITY|ID)\s*\[\s*"EPSG"\s*,\s*"?(\d{4,6})"?\s*\](?:\s*,\s*\w+\[[^\]]*\])*\s*\]\s*$/i.exec(
      wkt,
    )?.[1];
  if (code !== undefined) return systemOfEpsg(Number(code), place);
  const name = /^\s*(?:PROJCS|PROJCRS|GEOGCS|GEOGCRS|COMPD_CS|COMPOUNDCRS)\s*\[\s*"([^"]*)"/i.exec(wkt)?.[1];
  if (name === undefined)
    throw new InputProblem(
      'unknown-projection',
      `its map projection cannot be read: "${wkt.slice(0, 60)}".`,
      place,
      'Say which it is with its EPSG code.',
    );
  const utm = /^(wgs|etrs|nad|gda)[_ ]?(?:19|20)?(\d\d)[ _/]+(?:utm|mga)[_ ]*zone[_ ]*(\d{1,2})([NS]?)/i.exec(
    name,
  );
  const bases: Readonly<Record<string, number>> = {
    wgs84N: 32600,
    wgs84S: 32700,
    etrs89N: 25800,
    nad83N: 26900,
    gda94S: 28300,
  };
  if (utm !== null) {
    const [, datum = '', year = '', zone = '', side = ''] = utm;
    const south = side.toUpperCase() === 'S' || (side === '' && /^gda$/i.test(datum));
    const base = bases[`${datum.toLowerCase()}${year}${south ? 'S' : 'N'}`];
    if (base !== undefined) return systemOfEpsg(base + Number(zone), place);
  }
  const plain = name.replaceAll(/[\s/()]+/g, '_');
  const national = nationalGrids.find(({ alias }) => alias?.test(plain) === true);
  if (national !== undefined) return systemOfEpsg(national.epsg, place);
  const datum = /(?:DATUM|TRF)\s*\[\s*"([^"]*)"/i.exec(wkt)?.[1] ?? 'none';
  if (
    !/WGS_?(19)?84|GRS_?1980|ETRS|European_Terrestrial|North_American_(Datum_)?(of_)?1983|NAD_?(19)?83|GDA|NZGD_?2000/i.test(
      datum.replaceAll(' ', '_'),
    )
  )
    throw new InputProblem(
      'unknown-projection',
      `its datum, "${datum}" of "${name}", is not among those known here; positions could be a hundred metres out.`,
      place,
      'Convert it to WGS 84 (EPSG:4326) or its UTM zone first.',
    );
  if (/^\s*GEOG/i.test(wkt)) return geographic;
  try {
    return projected(name, null, wkt, 0);
  } catch {
    throw new InputProblem(
      'unknown-projection',
      `its map projection, "${name}", cannot be computed here.`,
      place,
      'Convert it to WGS 84 (EPSG:4326) or its UTM zone first.',
    );
  }
}

/** What a person names: `EPSG:27700` or a bare code, PROJ's `+proj=utm +zone=30 …`, or a WKT text. @throws InputProblem */
export function systemNamed(text: string, place: string): CoordinateSystem {
  const named = text.trim();
  const code = /^(?:epsg:)?(\d{4,6})$/i.exec(named)?.[1];
  if (code !== undefined) return systemOfEpsg(Number(code), place);
  return named.startsWith('+') ? systemOfProj(named, place) : systemOfWkt(named, place);
}

function systemOfProj(text: string, place: string): CoordinateSystem {
  if (/^\+proj=(longlat|latlong)\b/.test(text)) return geographic;
  try {
    if (text.length > 400 || !text.startsWith('+proj=')) throw new RangeError('no projection');
    const system = projected(text.slice(0, 60), null, text, 0);
    const there = system.fromLonLat(system.toLonLat(1000, 1000));
    if (!there.every(Number.isFinite)) throw new RangeError('no places');
    return system;
  } catch {
    throw new InputProblem(
      'unknown-projection',
      `"${text.slice(0, 60)}" is no map projection that can be computed here.`,
      place,
      'Give its EPSG code, or PROJ’s text for it, such as +proj=utm +zone=30 +ellps=WGS84.',
    );
  }
}

/** The UTM zone of a position on WGS 84, without the exceptions round Norway: any zone near is as good. */
export function utmSystemAt([lonDeg, latDeg]: LonLat): CoordinateSystem {
  const zone = Math.min(60, Math.max(1, Math.floor((lonDeg + 180) / 6) + 1));
  return systemOfEpsg((latDeg < 0 ? 32700 : 32600) + zone, '');
}

/** ESRI's spelling of a UTM zone on WGS 84, for a .prj file. */
export function utmWkt(epsg: number): string {
  const utm = utmOfEpsg(epsg);
  if (utm?.datum !== 'WGS 84') throw new RangeError(`EPSG:${String(epsg)} is no UTM zone on WGS 84`);
  return (
    `PROJCS["WGS_1984_UTM_Zone_${String(utm.zone)}${utm.south ? 'S' : 'N'}",GEOGCS["GCS_WGS_1984",` +
    'DATUM["D_WGS_1984",SPHEROID["WGS_1984",6378137.0,298.257223563]],PRIMEM["Greenwich",0.0],' +
    'UNIT["Degree",0.0174532925199433]],PROJECTION["Transverse_Mercator"],PARAMETER["False_Easting",500000.0],' +
    `PARAMETER["False_Northing",${utm.south ? '10000000.0' : '0.0'}],` +
    `PARAMETER["Central_Meridian",${String(utm.zone * 6 - 183)}.0],PARAMETER["Scale_Factor",0.9996],` +
    'PARAMETER["Latitude_Of_Origin",0.0],UNIT["Meter",1.0]]\n'
  );
}

const geographic: CoordinateSystem = {
  name: 'WGS 84 longitude and latitude',
  epsg: 4326,
  geographic: true,
  uncertainM: 0,
  toLonLat: lonLat,
  fromLonLat: ([lon, lat]) => [lon, lat],
};

function projected(
  name: string,
  epsg: number | null,
  definition: string,
  uncertainM: number,
): CoordinateSystem {
  const converter = proj4(definition);
  return {
    name,
    epsg,
    geographic: false,
    uncertainM,
    toLonLat: (x, y) => {
      const [lon = NaN, lat = NaN] = converter.inverse([x, y]);
      return lonLat(lon, lat);
    },
    fromLonLat: ([lon, lat]) => {
      const [x = NaN, y = NaN] = converter.forward([lon, lat]);
      return [x, y];
    },
  };
}
