/** Where golf is played, with room to spare: metres above the sea and degrees C. */
export const AIR_BOUNDS = { heightAboveSeaM: [-450, 5000], temperatureC: [-30, 55] } as const;
