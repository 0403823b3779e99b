/**
 * Units of height systems, by EPSG code: a file that names one often leaves the unit out. As PROJ's database has them,
 * read with gdalsrsinfo.
 */
export const verticalUnits: ReadonlyMap<number, 'm' | 'ft' | 'usft'> = new Map([
  [5702, 'usft'], // NGVD 29
  [6360, 'usft'], // NAVD 88
  [8228, 'ft'], // NAVD 88
  [8050, 'ft'], // mean sea level
  [5703, 'm'], // NAVD 88
  [5714, 'm'], // mean sea level
]);
